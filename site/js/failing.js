// @ts-check
// What the page says, and shows, where the planner gives no answer.

import { announce, settleSoon } from "./aloud.js";
import { book } from "./diary.js";
import { due, later, leaveOut, outdate, skip } from "./exploring.js";
import { say } from "./fragments.js";
import { shown } from "./keeping.js";
import { opened } from "./opening.js";
import { logForm, words } from "./places.js";
import { busy, changes, drop, moves } from "./questions.js";
import { at } from "./sight.js";
import { planId, stay } from "./standing.js";

/** It is asked once more. @param {import("./questions.js").Question} question */
export function again(question) {
  if (changes(question)) excuse("again", question);
}

/** There will be no reply. @param {import("./questions.js").Question} question */
export function noReply(question) {
  if (question.ask === "rest") return skip(question.step ?? 0);
  excuse(changes(question) ? "slow-plan" : "slow", question);
  opened();
  if (moves(question)) {
    stay();
    later(due); // of the plan that stands
  } else if (changes(question)) leaveOut();
}

/** The planner does not run. @param {string} why @param {import("./questions.js").Question} [question] that it had */
export function down(why, question) {
  excuse("down", question, why);
  opened();
  if (!shown) return; // what the page was to open at first comes when it can
  leaveOut();
  drop(() => true);
  stay();
}

/**
 * Says why there is no answer, and that the one which stands is to something else.
 * @param {string} why by the name of the words
 * @param {import("./questions.js").Question} [question] that has no answer
 * @param {string} [fault] that they name
 */
function excuse(why, question, fault = "") {
  const text = words(why).replace("…", fault);
  announce(text);
  say("message", text);
  if (book.id() !== planId) {
    logForm.hidden = true; // what is of another plan's log does not stand for this one's
    outdate("advice", "left");
  }
  settleSoon();
  const wanted = question && changes(question) ? question : busy();
  // Another plan that is on its way still hides this one; to questions there is no answer yet.
  if (!wanted || at === "start" || (why === "again" && moves(wanted))) return;
  const stands = words(wanted.ask === "answer" ? "not-the-form" : shown ? "not-opened" : wanted.ask === "restore" ? "not-yours" : "not-the-link");
  say("stale", stands);
  say("always", stands);
}
