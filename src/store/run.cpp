// Reckonings kept beside the show: curves as blobs, the rest as JSON.
#include <bit>
#include <cmath>
#include <cstring>
#include <limits>

#include "base/text.h"
#include "store/database.h"
#include "store/inside.h"
#include "store/rows.h"

namespace backmark::store {

namespace {

using model::MakerChance;
using model::PieceBelief;

constexpr int runs_kept = 3;

static_assert(std::endian::native == std::endian::little, "curves are stored little end first");

// JSON has no infinity and no not-a-number: they are kept as nothing and come back as the
// latter.
Json finite(double value) {
  return std::isfinite(value) ? Json(value) : Json(nullptr);
}
double number(const Json& json) {
  return json.is_null() ? std::numeric_limits<double>::quiet_NaN() : json.get<double>();
}

Json to_json(const PieceBelief& belief, const model::Phrases& phrases) {
  Json makers = Json::array();
  for (const MakerChance& chance : belief.maker.makers) {
    makers.push_back({chance.maker.value, chance.p});
  }
  return {{"makers", makers},
          {"unrecorded", belief.maker.unrecorded},
          {"documented", belief.maker.documented},
          {"place", belief.place.place.value},
          {"place_p", belief.place.p},
          {"dated", belief.dated},
          {"limit", belief.limit},
          {"conflict", belief.conflict},
          {"made", phrases.made},
          {"made_row", phrases.made_row},
          {"by", phrases.maker},
          {"by_row", phrases.maker_row},
          {"at", phrases.place},
          {"initials", phrases.initials}};
}

void from_json(const Json& json, PieceBelief& belief, model::Phrases& phrases) {
  for (const Json& chance : json.at("makers")) {
    belief.maker.makers.push_back({{chance.at(0)}, chance.at(1)});
  }
  belief.maker.unrecorded = json.at("unrecorded");
  belief.maker.documented = json.at("documented");
  belief.place.place.value = json.at("place");
  belief.place.p = json.at("place_p");
  belief.dated = json.at("dated");
  belief.limit = json.at("limit");
  belief.conflict = json.at("conflict");
  phrases.made = json.at("made");
  phrases.made_row = json.at("made_row");
  phrases.maker = json.at("by");
  phrases.maker_row = json.at("by_row");
  phrases.place = json.at("at");
  phrases.initials = json.at("initials");
}

Json diagnostics(const model::Beliefs& beliefs) {
  Json misfits = Json::array();
  for (const model::Misfit& misfit : beliefs.misfits) {
    misfits.push_back({{"piece", misfit.piece.value},
                       {"part", misfit.part.value},
                       {"record", misfit.record},
                       {"what", misfit.what},
                       {"p", misfit.p}});
  }
  return {{"notes", beliefs.notes},
          {"chains", beliefs.chains},
          {"rhat_max", finite(beliefs.rhat_max)},
          {"ess_min", finite(beliefs.ess_min)},
          {"converged", beliefs.converged},
          {"seconds", beliefs.seconds},
          {"peak_mb", beliefs.peak_mb},
          {"misfits", misfits}};
}

void read_diagnostics(const Json& json, model::Beliefs& beliefs) {
  beliefs.notes = json.at("notes").get<std::vector<std::string>>();
  beliefs.chains = json.at("chains");
  beliefs.rhat_max = number(json.at("rhat_max"));
  beliefs.ess_min = number(json.at("ess_min"));
  beliefs.converged = json.at("converged");
  beliefs.seconds = json.at("seconds");
  beliefs.peak_mb = json.at("peak_mb");
  for (const Json& misfit : json.at("misfits")) {
    beliefs.misfits.push_back({{misfit.at("piece")},
                               {misfit.at("part")},
                               misfit.at("record"),
                               misfit.at("what"),
                               misfit.at("p")});
  }
}

std::int64_t write_run_row(SQLite::Database& database, const Run& run) {
  SQLite::Statement statement(
      database,
      "INSERT INTO run (at, position, seed, version, digest, diagnostics) "
      "VALUES (?, ?, ?, ?, ?, ?)");
  statement.bind(1, run.at);
  statement.bind(2, run.position);
  statement.bind(3, static_cast<std::int64_t>(run.beliefs.seed));
  statement.bind(4, run.beliefs.version);
  statement.bind(5, run.beliefs.digest);
  statement.bind(6, dumped(diagnostics(run.beliefs)));
  statement.exec();
  return database.getLastInsertRowid();
}

void write_beliefs(SQLite::Database& database, std::int64_t id, const Run& run) {
  SQLite::Statement statement(
      database,
      "INSERT INTO belief (run, piece, first_year, curve, detail) VALUES (?, ?, ?, ?, ?)");
  for (std::size_t i = 0; i < run.beliefs.pieces.size(); ++i) {
    const PieceBelief& belief = run.beliefs.pieces[i];
    const std::vector<double>& curve = belief.year.p;
    statement.bind(1, id);
    statement.bind(2, belief.piece.value);
    statement.bind(3, belief.year.span.first.value);
    // The address of an empty curve is null, which SQLite takes for NULL.
    statement.bind(4, curve.empty() ? static_cast<const void*>("") : curve.data(),
                   static_cast<int>(curve.size() * sizeof(double)));
    statement.bind(5, dumped(to_json(belief, run.phrases[i])));
    statement.exec();
    statement.reset();
  }
}

// The middle year of each piece that can be dated, for the search box.
void write_years(SQLite::Database& database, const Run& run) {
  database.exec("DELETE FROM reckoned_year");
  SQLite::Statement statement(database, "INSERT INTO reckoned_year VALUES (?, ?)");
  for (const PieceBelief& belief : run.beliefs.pieces) {
    double sum = 0;
    int year = belief.year.span.first.value;
    for (const double p : belief.year.p) {
      sum += p;
      if (sum >= 0.5) {
        break;
      }
      ++year;
    }
    if (belief.dated && !belief.year.p.empty()) {
      statement.bind(1, belief.piece.value);
      statement.bind(2, year);
      statement.exec();
      statement.reset();
    }
  }
}

void read_curve(const SQLite::Column& column, PieceBelief& belief) {
  std::vector<double>& curve = belief.year.p;
  curve.resize(static_cast<std::size_t>(column.getBytes()) / sizeof(double));
  if (!curve.empty()) {
    std::memcpy(curve.data(), column.getBlob(), curve.size() * sizeof(double));
  }
  belief.year.span.last =
      belief.year.span.first + (curve.empty() ? 0 : static_cast<int>(curve.size()) - 1);
}

void read_beliefs(SQLite::Database& database, std::int64_t id, Run& run) {
  SQLite::Statement statement(
      database,
      "SELECT piece, first_year, curve, detail FROM belief WHERE run = ? ORDER BY piece");
  statement.bind(1, id);
  while (statement.executeStep()) {
    PieceBelief& belief = run.beliefs.pieces.emplace_back();
    belief.piece.value = statement.getColumn(0).getInt();
    belief.year.span.first.value = statement.getColumn(1).getInt();
    read_curve(statement.getColumn(2), belief);
    from_json(Json::parse(statement.getColumn(3).getText("")), belief,
              run.phrases.emplace_back());
  }
}

}  // namespace

Result<Done> Store::record_run(const Run& run) {
  if (run.phrases.size() != run.beliefs.pieces.size()) {
    throw BrokenPromise("a reckoning is recorded with a phrase for every piece");
  }
  try {
    SQLite::Database& database = *inside_->database;
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    const std::int64_t id = write_run_row(database, run);
    write_beliefs(database, id, run);
    write_years(database, run);
    const auto old = fmt::format("(SELECT max(id) - {} FROM run)", runs_kept);
    database.exec("DELETE FROM belief WHERE run <= " + old);
    database.exec("DELETE FROM run WHERE id <= " + old);
    transaction.commit();
    return Done{};
  } catch (const SQLite::Exception& error) {
    return in_words(error, inside_->folder);
  }
}

Result<std::optional<Run>> Store::last_run() {
  try {
    SQLite::Database& database = *inside_->database;
    SQLite::Transaction reading(database);
    SQLite::Statement statement(database,
                                "SELECT id, at, position, seed, version, digest, diagnostics "
                                "FROM run ORDER BY id DESC LIMIT 1");
    if (!statement.executeStep()) {
      return std::optional<Run>();
    }
    Run run;
    run.at = statement.getColumn(1).getInt64();
    run.position = statement.getColumn(2).getInt64();
    run.beliefs.seed = static_cast<std::uint64_t>(statement.getColumn(3).getInt64());
    run.beliefs.version = statement.getColumn(4).getString();
    run.beliefs.digest = statement.getColumn(5).getString();
    read_diagnostics(Json::parse(statement.getColumn(6).getText("")), run.beliefs);
    read_beliefs(database, statement.getColumn(0).getInt64(), run);
    return std::optional<Run>(std::move(run));
  } catch (const SQLite::Exception& error) {
    return in_words(error, inside_->folder);
  }
}

}  // namespace backmark::store
