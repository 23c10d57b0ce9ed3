#include "words/table.h"

#include "base/result.h"

namespace backmark::words {

const std::vector<TableRow>& year_table() {
  static const std::vector<TableRow> rows{
      {1, "1954", "one year has 9 chances in 10", "nine in ten that year", 0.90},
      {2, "1954 or 1955", "two neighbouring years have 9 chances in 10",
       "nine in ten one of them", 0.90},
      {3, "1948–56", "the shortest run of 3 to 9 years with 9 chances in 10",
       "nine in ten inside, ends included", 0.90},
      {4, "1950s", "a calendar decade has 9 chances in 10", "nine in ten inside", 0.90},
      {5, "about 1955",
       "8 chances in 10 within 5 years either way; the year that makes it most",
       "four in five within 5 years", 0.80},
      {6, "probably 1950s", "a calendar decade has 6 chances in 10", "three in five inside",
       0.60},
      {7, "1947–67", "the shortest run of 10 to 30 years with 9 chances in 10",
       "nine in ten inside, ends included", 0.90},
      {8, "mid-twentieth century",
       "8 chances in 10 in the first, second or third third of a century (01–33, 34–66, "
       "67–100)",
       "four in five inside", 0.80},
      {9, "after 1946, before 1961",
       "9 chances in 10 on one side of a limit that has a reason; the reason is printed",
       "nine in ten", 0.90},
      {10, "not dated", "no row above holds", "nothing is claimed", 0},
  };
  return rows;
}

const std::vector<TableRow>& maker_table() {
  static const std::vector<TableRow> rows{
      {1, "X", "19 chances in 20 for X, and a mark, a document or an acceptance on file",
       "19 in 20", 0.95},
      {2, "workshop of X",
       "8 chances in 10 for X's hand or shop, under 5 in 10 for X's own hand",
       "four in five from the shop", 0.80},
      {3, "attributed to X",
       "5 chances in 10 for X, and at least twice the next, unrecorded makers included",
       "more likely than not; of all such, expect about 7 in 10", 0.50},
      {4, "X or Z", "8 chances in 10 for the two together, neither twice the other",
       "four in five one of them", 0.80},
      {5, "circle of X", "6 chances in 10 for somebody near X in time and place",
       "three in five near X", 0.60},
      {6, "possibly by X", "2 chances in 10 for X, under 6 in 10 for an unrecorded maker",
       "at least one in five; mostly under one in two", 0.20},
      {7, "unrecorded maker, PLACE", "no row above holds; the place by its own rows",
       "nothing but the place", 0},
      {8, "designed by X; stone by X; sold by X",
       "a source says so: by name from 19 chances in 20, \"attributed to\" from 5 in 10",
       "as the same words for a maker; who sold it is never the maker", 0},
      {9, "after X; style of X; formerly attributed to X", "the curator alone, with a reason",
       "no odds", 0},
  };
  return rows;
}

const std::vector<TableRow>& place_table() {
  static const std::vector<TableRow> rows{
      {1, "PLACE", "8 chances in 10", "four in five", 0.80},
      {2, "probably PLACE", "6 chances in 10", "three in five", 0.60},
      {3, "", "no row above holds", "no place is named", 0},
  };
  return rows;
}

const std::vector<TableRow>& replaced_table() {
  static const std::vector<TableRow> rows{
      {1, "cord replaced", "9 chances in 10", "nine in ten", 0.90},
      {2, "cord probably replaced", "6 chances in 10", "three in five", 0.60},
      {3, "cord possibly replaced", "1 chance in 4", "one in four", 0.25},
  };
  return rows;
}

const TableRow& row_of(const std::vector<TableRow>& table, int row) {
  if (row < 1 || row > static_cast<int>(table.size())) {
    throw BrokenPromise("a table of phrases has no such row");
  }
  return table[static_cast<std::size_t>(row - 1)];
}

}  // namespace backmark::words
