// Shared by the two halves of the CSV export: pieces (export_csv.cpp) and lists
// (export_list.cpp). Bodies only.
#pragma once

#include <cstdint>
#include <string>
#include <unordered_map>

#include "exchange/export_csv.h"

namespace backmark::exchange {

// What the map's file says, by the id of its subject.
std::unordered_map<std::int32_t, const model::Row*> rows_of(const model::Show& show,
                                                            const ImportMap& map);

// As few digits as say it, at most ten.
std::string plain_number(double value);

// Adds the rows of a map of makers, sources or observations.
void export_list(const model::Show& show, const ImportMap& map, CsvExport& out);

}  // namespace backmark::exchange
