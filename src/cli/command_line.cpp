#include "cli/command_line.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <iostream>
#include <iterator>
#include <map>
#include <memory>
#include <ostream>

#include "base/text.h"
#include "desk/operations.h"
#include "desk/written.h"

namespace backmark::cli {

namespace {

using desk::Operation;
using desk::Parameter;
using desk::Takes;

// What CLI11 fills for one command.
struct Filled {
  const Operation* operation = nullptr;
  CLI::App* command = nullptr;
  std::map<std::string, std::vector<std::string>> values;
  std::map<std::string, bool> flags;
  bool json = false;
};

void declare(Filled& filled, const Parameter& parameter) {
  const std::string name = parameter.positional ? parameter.name : "--" + parameter.name;
  if (parameter.takes == Takes::flag) {
    filled.command->add_flag(name, filled.flags[parameter.name], parameter.help);
    return;
  }
  CLI::Option* option =
      filled.command->add_option(name, filled.values[parameter.name], parameter.help);
  option->required(parameter.required);
  if (parameter.takes == Takes::texts) {
    option->expected(parameter.required ? 1 : 0, CLI::detail::expected_max_vector_size);
  } else {
    option->expected(1)->allow_extra_args(false);
  }
}

std::vector<const Operation*> all_commands(const std::vector<Operation>& doors) {
  std::vector<const Operation*> all;
  for (const auto* list : {&desk::operations(), &doors}) {
    for (const Operation& operation : *list) {
      all.push_back(&operation);
    }
  }
  return all;
}

std::vector<std::unique_ptr<Filled>> declare_all(
    CLI::App& program, const std::vector<const Operation*>& commands) {
  std::vector<std::unique_ptr<Filled>> all;
  for (const Operation* operation : commands) {
    auto filled = std::make_unique<Filled>();
    filled->operation = operation;
    filled->command = program.add_subcommand(operation->name, operation->help);
    for (const Parameter& parameter : operation->parameters) {
      declare(*filled, parameter);
    }
    filled->command->add_flag("--json", filled->json, "answer in JSON, for machines");
    all.push_back(std::move(filled));
  }
  return all;
}

// CLI11 takes an argument in square brackets for a list and cuts it up; to us it is a text (an
// EDTF set). So its first bracket is hidden from CLI11 and put back afterwards.
constexpr char hidden_bracket = '\x01';

std::string hide_bracket(std::string argument) {
  if (!argument.empty() && argument.front() == '[') {
    argument.front() = hidden_bracket;
  }
  return argument;
}

std::string show_bracket(std::string argument) {
  if (!argument.empty() && argument.front() == hidden_bracket) {
    argument.front() = '[';
  }
  return argument;
}

desk::Call to_call(const Filled& filled) {
  desk::Call call;
  for (const auto& [name, values] : filled.values) {
    if (!values.empty()) {
      std::vector<std::string> given;
      std::transform(values.begin(), values.end(), std::back_inserter(given), show_bracket);
      call.set(name, std::move(given));
    }
  }
  for (const auto& [name, given] : filled.flags) {
    if (given) {
      call.set(name, {});
    }
  }
  call.standard_input = [] {
    return std::string(std::istreambuf_iterator<char>(std::cin), {});
  };
  return call;
}

void print_problem(const Problem& problem, std::ostream& err) {
  err << "backmark: " << to_line(problem) << '\n';
}

int answer(const Filled& filled,
           const desk::Surroundings& surroundings,
           std::ostream& out,
           std::ostream& err) {
  const Result<desk::Answer> result = filled.operation->run(to_call(filled), surroundings);
  if (!result) {
    print_problem(result.problem(), err);
    return 2;
  }
  if (filled.json) {
    out << desk::to_written(result->json, 2) << '\n';
  } else {
    out << result->text;
  }
  for (const Problem& problem : result->problems) {
    print_problem(problem, err);
  }
  out.flush();
  return result->problems.empty() ? 0 : 2;
}

// CLI11's own words, with the nearest command when a command was mistyped.
int refuse(const CLI::ParseError& error,
           const std::vector<std::string>& arguments,
           const std::vector<const Operation*>& commands,
           std::ostream& err) {
  err << "backmark: " << error.what();
  if (!arguments.empty()) {
    std::vector<std::string> names;
    for (const Operation* operation : commands) {
      names.push_back(operation->name);
    }
    const auto near = closest(arguments.front(), names);
    if (near && *near != arguments.front()) {
      err << "; did you mean \"" << *near << "\"?";
    }
  }
  err << "\nRun \"backmark --help\" or \"backmark COMMAND --help\" for what can be asked.\n";
  return 2;
}

}  // namespace

int run(const std::vector<std::string>& arguments,
        const desk::Surroundings& surroundings,
        const std::vector<Operation>& doors,
        std::ostream& out,
        std::ostream& err) {
  CLI::App program{
      "Backmark keeps the evidence on small worn ornaments, reckons years and makers, and "
      "prints "
      "the results."};
  program.name("backmark");
  program.set_version_flag("--version", "backmark " BACKMARK_VERSION);
  program.require_subcommand(1);
  program.set_help_all_flag();
  const auto commands = all_commands(doors);
  const auto all = declare_all(program, commands);
  try {
    // CLI11 takes the arguments from the back.
    std::vector<std::string> reversed;
    std::transform(arguments.rbegin(), arguments.rend(), std::back_inserter(reversed),
                   hide_bracket);
    program.parse(std::move(reversed));
  } catch (const CLI::Success& wanted) {  // --help, --version
    return program.exit(wanted, out, err);
  } catch (const CLI::ParseError& error) {
    return refuse(error, arguments, commands, err);
  }
  for (const auto& filled : all) {
    if (!filled->command->parsed()) {
      continue;
    }
    try {
      return answer(*filled, surroundings, out, err);
    } catch (const BrokenPromise& fault) {
      err << "backmark: a fault of the program: " << fault.what()
          << "\nNothing was changed. Please report this with the command you gave.\n";
      return 1;
    }
  }
  return 2;
}

}  // namespace backmark::cli
