// Every operation, by the function that describes it. operations.cpp puts them in order.
#pragma once

#include "desk/open.h"
#include "desk/operation.h"

namespace backmark::desk {

Operation new_show();
Operation demo_show();
Operation import_file();
Operation list_pieces();
Operation export_show();
Operation print_papers();
Operation check_show();
Operation read_dates();
Operation reckon_formula();
Operation find_pieces();
Operation read_history();
Operation set_section();
Operation set_setting();
Operation pick_pieces();
Operation infer_show();
Operation explain_piece();
Operation table_pieces();
Operation sheet_piece();
Operation paper_states();
Operation what_if_seen();
Operation note_seen();
Operation undo_change();
Operation years_of_use();
Operation sources_told();
Operation add_record();
Operation withdraw_record();
Operation calibrate_show();
Operation test_claim();
Operation look_list();
Operation identify_material();
Operation screen_show();
Operation schedule_show();
Operation set_task();
Operation set_case();
Operation set_fixture();
Operation put_pieces();
Operation set_requirement();
Operation keep_reading();
Operation keep_exposure();
Operation light_show();
Operation climate_show();
Operation loads_show();
Operation log_leave();
Operation care_show();
Operation show_photographs();

}  // namespace backmark::desk
