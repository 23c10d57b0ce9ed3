// The words of the demo show for what a Work is; none is empty, but for "no such thing".
#pragma once

#include <string_view>
#include <vector>

#include "scenario/work.h"

namespace backmark::scenario {

// The last value of each vocabulary, so that tables and loops know how many there are.
template <class E>
inline constexpr E last_of = E::none;
template <>
inline constexpr Form last_of<Form> = Form::turned_pendant;
template <>
inline constexpr Motif last_of<Motif> = Motif::herringbone;
template <>
inline constexpr Metal last_of<Metal> = Metal::pewter;
template <>
inline constexpr Stone last_of<Stone> = Stone::driftwood;
template <>
inline constexpr Technique last_of<Technique> = Technique::granulation;
template <>
inline constexpr Border last_of<Border> = Border::double_line;
template <>
inline constexpr Setting last_of<Setting> = Setting::pegged;
template <>
inline constexpr Backing last_of<Backing> = Backing::metal;
template <>
inline constexpr Fitting last_of<Fitting> = Fitting::pin;
template <>
inline constexpr Solder last_of<Solder> = Solder::rivets;
template <>
inline constexpr Finish last_of<Finish> = Finish::cast_skin;
template <>
inline constexpr CordType last_of<CordType> = CordType::vinyl_braid;
template <>
inline constexpr CordColour last_of<CordColour> = CordColour::green;
template <>
inline constexpr TipForm last_of<TipForm> = TipForm::spindle;

template <class E>
inline constexpr std::size_t count_of = static_cast<std::size_t>(last_of<E>) + 1;

// As the observations have them: "figure-eight wire", "braided vinyl".
std::string_view word_of(Form value);
std::string_view word_of(Outline value);
std::string_view word_of(Motif value);
std::string_view word_of(Metal value);
std::string_view word_of(Stone value);
std::string_view word_of(Technique value);
std::string_view word_of(Border value);
std::string_view word_of(Setting value);
std::string_view word_of(Backing value);
std::string_view word_of(Fitting value);
std::string_view word_of(Solder value);
std::string_view word_of(Finish value);
std::string_view word_of(CordType value);
std::string_view word_of(CordColour value);
std::string_view word_of(TipForm value);
std::string_view word_of(MarkForm value);
std::string_view word_of(MarkOutline value);

// "Scallop slide with ormer shell": form first word kept lower, one capital.
std::string title_of(const Work& work);

// The legends of the trade's spring clip, oldest first, and of the two kinds of bar.
const std::vector<std::string>& clip_legends();
const std::vector<std::string>& bar_kinds();

}  // namespace backmark::scenario
