// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The cook's own pans, and what is to be made in them.
#include <algorithm>

#include "app/view/views.h"

namespace tinwright::view {
namespace {

constexpr std::size_t kMostShown = 60;  // pans with a form of their own; the others stay in the file

/// The place of a pan's name among plan.pans; their number where it is not chosen.
std::size_t place_among_chosen(const JobForm& form, const std::string& name) {
  const std::size_t count = count_at(form.document(), "plan.pans");
  for (std::size_t i = 0; i < count; ++i) {
    if (form.text("plan.pans." + std::to_string(i) + ".name") == name) return i;
  }
  return count;
}

void choose_pan(JobForm& form, const std::string& at, const std::string& name) {
  const std::size_t place = place_among_chosen(form, name);
  bool is_used = place < count_at(form.document(), "plan.pans");
  if (toggle(at + ".use", "Use it for this batch", is_used)) {
    if (is_used) {
      JsonNode chosen = make_object();
      put_text(chosen, "name", name);
      form.append("plan.pans", chosen);
    } else {
      form.remove("plan.pans." + std::to_string(place));
    }
    return;
  }
  if (is_used) form.edit_number("plan.pans." + std::to_string(place) + ".count", "How many of them", "1");
}

/// A chosen pan goes by its name: where that changes, the choice follows.
void rename(JobForm& form, const std::string& at, const std::string& before) {
  form.edit(at + ".name", "What I call it", "23 cm springform");
  const std::string now = form.text(at + ".name");
  if (now == before) return;
  const std::size_t place = place_among_chosen(form, before);
  if (place < count_at(form.document(), "plan.pans")) form.put("plan.pans." + std::to_string(place) + ".name", now);
}

bool has_problem(const Texts& problems, const std::string& at) {
  const auto found = problems.lower_bound(at + ".");
  return found != problems.end() && found->first.rfind(at + ".", 0) == 0;
}

/// Name, sizes and water of a pan; true when it is to be taken out.
bool edit_details(JobForm& form, PanEntry& entry, const std::string& at, const Texts& problems) {
  rename(form, at, form.text(at + ".name"));
  begin_columns(2);
  form.edit_number(at + ".count", "I have", "1");
  next_column();
  form.edit(at + ".water", "Water to the brim", "1850 g");
  end_columns();
  if (edit_pan_entry(at + ".pan.", entry, problems)) {
    form.put_node(at + ".pan", document_from(pan_fields(entry, "")));
  }
  remark(at + ".gauge", "Weighed the water it holds to the brim? Then one of its sizes may be left empty.");
  form.show_problem(at + ".pan");
  return button(at + ".out", "Take it out of the cupboard", ButtonLook::kQuiet);
}

bool edit_own(JobForm& form, JobForms& forms, std::size_t number, const JobAnswer& answer) {
  const std::string at = "cupboard." + std::to_string(number);
  const std::string name = form.text(at + ".name");
  const std::string title = name.empty() ? "Pan " + std::to_string(number + 1) : name;
  bool takes_out = false;
  begin_region(at, title, RegionLook::kPlain);
  heading(at + "/title", title, 3);
  if (number < answer.holds.size()) remark(at + "/about", answer.holds[number]);
  choose_pan(form, at, name);
  const bool is_wrong = has_problem(answer.problems, at);  // then its form is open
  bool is_open = is_wrong || forms.open_pan == static_cast<int>(number);
  if (!is_wrong && button(at + ".change", is_open ? "Done with " + title : "Change " + title, ButtonLook::kQuiet)) {
    is_open = !is_open;
    forms.open_pan = is_open ? static_cast<int>(number) : -1;
  }
  if (is_open) takes_out = edit_details(form, forms.cupboard[number], at, answer.problems);
  end_region();
  return takes_out;
}

}  // namespace

void edit_cupboard(JobForm& form, JobForms& forms, const JobAnswer& answer) {
  begin_region("cupboard", "My cupboard");
  heading("cupboard/title", "My cupboard", 2);
  form.show_problem("cupboard");
  const std::size_t count = std::min(count_at(form.document(), "cupboard"), kMostShown);
  forms.cupboard.resize(count);
  for (std::size_t i = 0; i < count; ++i) {
    if (!edit_own(form, forms, i, answer)) continue;
    const std::string name = form.text("cupboard." + std::to_string(i) + ".name");
    const std::size_t place = place_among_chosen(form, name);
    if (place < count_at(form.document(), "plan.pans")) form.remove("plan.pans." + std::to_string(place));
    form.remove("cupboard." + std::to_string(i));
    forms.edition = -1;
    forms.open_pan = -1;
    break;
  }
  const std::size_t all = count_at(form.document(), "cupboard");
  if (all > count)
    remark("cupboard/more", std::to_string(all - count) + " more pans are in the file and are used too.");
  if (button("cupboard/add", "Add a pan", ButtonLook::kPlain, all < kMostShown)) {
    JsonNode own = make_object(), pan = make_object();
    put_text(pan, "catalogue", "springform-23cm");
    put_text(own, "name", "Pan " + std::to_string(all + 1));
    put(own, "pan", pan);
    form.append("cupboard", own);
    forms.edition = -1;
    forms.open_pan = static_cast<int>(all);
  }
  end_region();
}

void edit_wishes(JobForm& form) {
  begin_region("wishes", "What I want");
  heading("wishes/title", "What I want", 2);
  const bool has_chosen = count_at(form.document(), "plan.pans") > 0;
  form.choose("plan.make", "Make", {"pans", "batch"}, {"As much as my pans take", "Whole batches of the recipe"},
              has_chosen ? 0 : 1);
  const std::string make = form.text("plan.make");
  if (make == "batch" || (make.empty() && !has_chosen)) form.edit("plan.batches", "Batches", "1");
  if (!has_chosen) remark("wishes/found", "No pan is chosen in the cupboard, so the best set of all of them is found.");
  form.show_problem("plan.pans");
  form.edit("plan.table_at", "On the table at", "2026-12-24 18:00", "Year-month-day and time; may be left empty.");
  end_region();
}

}  // namespace tinwright::view
