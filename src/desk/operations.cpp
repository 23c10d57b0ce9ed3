#include "desk/operations.h"

#include "desk/each.h"

namespace backmark::desk {

const std::vector<Operation>& operations() {
  // In the order in which a curator meets them.
  static const std::vector<Operation> list = {
      new_show(),        demo_show(),         import_file(),      infer_show(),
      list_pieces(),     explain_piece(),     set_setting(),      set_section(),
      pick_pieces(),     check_show(),        print_papers(),     export_show(),
      find_pieces(),     read_history(),      read_dates(),       reckon_formula(),
      calibrate_show(),  test_claim(),        look_list(),        table_pieces(),
      sheet_piece(),     identify_material(), screen_show(),      paper_states(),
      what_if_seen(),    note_seen(),         show_photographs(), schedule_show(),
      undo_change(),     years_of_use(),      sources_told(),     add_record(),
      withdraw_record(), set_case(),          set_fixture(),      put_pieces(),
      keep_reading(),    keep_exposure(),     set_requirement(),  light_show(),
      climate_show(),    loads_show(),        log_leave(),        care_show(),
      set_task(),
  };
  return list;
}

}  // namespace backmark::desk
