// What the pieces say of the sources and of the claims on file, kept between calls where the
// door keeps shows.
#pragma once

#include <map>
#include <memory>

#include "desk/fitted.h"
#include "evidence/borne_out.h"
#include "evidence/claims_on_file.h"
#include "model/claim_test.h"

namespace backmark::desk {

struct SourcesWeighed {
  evidence::BorneOut borne_out;
  std::map<std::int32_t, evidence::SourceChecked> sources;  // those of borne_out, by id
  std::map<std::string, model::ClaimTest> claims;           // by how they are asked
};

// From the usual fit (fitted_show). Problems: those of the fit.
Result<std::shared_ptr<const SourcesWeighed>> weigh_sources(
    OpenShow& open,
    const std::vector<evidence::ClaimOnFile>& claims,
    const Surroundings& around);

}  // namespace backmark::desk
