// @ts-check
// What the planner is given with a question, and what its reply does to the page.

import { announce, settleSoon, unsettle } from "./aloud.js";
import { formText, sentData } from "./boxes.js";
import { paper, save, today } from "./device.js";
import { book, openBook, openLog } from "./diary.js";
import { due, explored, later, owe } from "./exploring.js";
import { arrange, draw, drew, mark, seen, unsay } from "./fragments.js";
import { address, answered, keep, keepAnswered, kept, shown } from "./keeping.js";
import { become, opened } from "./opening.js";
import { find, logForm, planForm, reveal } from "./places.js";
import { askAgain, askLast, busy, changes, idle, moves, saves } from "./questions.js";
import { at, inSight, jobOf } from "./sight.js";
import { canStep, reshaped, shapeNow } from "./undo.js";
import { call, entered, example, planId, stay, write } from "./standing.js";

/** What the two forms held when the last question was asked, to see what was typed since. */
let sent = "";
let noted = "";

/** What the planner is given with a question. @param {import("./questions.js").Question} question */
export function compose(question) {
  const typed = sentData(planForm);
  sent = String(new URLSearchParams(typed));
  noted = formText(logForm);
  let { text } = question;
  const day = today();
  const { ask, action, clock, step, print } = question;
  if (text === undefined || ask === "feedback") {
    const data = new URLSearchParams(typed);
    if (ask === "feedback") {
      for (const [name, typed] of new URLSearchParams(text ?? sentData(logForm))) data.set(name, typed);
    }
    for (const [name, value] of Object.entries({ action, clock, step, seen, print, today: day, languages: navigator.languages })) if (value) data.set(name, String(value));
    if (step || action?.startsWith("show.") || (ask === "answer" && shown && shown !== (kept || example))) data.set("good", (question.good = kept));
    text = data.toString();
  }
  else if (ask === "answer" || ask === "restore") text += "&today=" + day;
  return { ask: ask === "restore" ? "answer" : ask === "open" && !shown ? "openFirst" : ask, text };
}

/** @param {import("./questions.js").Question} question @param {import("./questions.js").Reply} reply to it */
export function take(question, reply) {
  if (question.ask === "rest") {
    if (!reply.more && !logForm.hidden && book.typed()) askLast({ ask: "feedback", quiet: true });
    return explored(reply);
  }
  if (late(question, reply)) return;
  const moved = moves(question);
  const wrong = reply.errors.length;
  if (moved) {
    opened();
    if (reply.link || question.ask === "restore") become(question, reply);
    else {
      stay();
      write(""); // a reload shows what stands here
    }
  }
  answered(question, reply);
  if (changes(question) && (reply.link || wrong)) unsay();
  if (reply.more || draws(reply, "job")) owe(reply, question.ask === "answer");
  for (const { id, html } of reply.fragments) if (id !== "share") draw(id, html);
  arrange(reply.order);
  drew(reply.number);
  if (draws(reply, "job")) address(); // of the cards in it
  canStep();
  if (reply.at && (question.action || moved || at !== "all")) {
    const job = jobOf(at) !== jobOf(reply.at);
    const shapes = question.action && !/^(show\.|set-clock|log-|ask-)/.test(question.action);
    if (shapes) reshaped();
    inSight(moved && question.to === "all" ? "all" : reply.at); // which the planner knows nothing of
    if (question.action || question.undo) entered((job || Boolean(shapes)) && !question.back && !question.undo, shapeNow());
  }
  const feedback = question.ask === "feedback";
  const saving = feedback || saves(question);
  if (question.action === "log-open") openBook(question.plan ?? "", question.text ?? "");
  else if (feedback && question.action) book.keep(true);
  if (feedback) mark(reply.errors, logForm);
  else if (reply.link || wrong || reply.at === "start") mark(reply.errors, planForm); // what cannot be opened leaves what is wrong in the form
  if (reply.title) {
    document.title = reply.title + " – Evenrow";
    call(reply.title);
  }
  if (!saving && (question.action || moved || question.undo)) keep(question.undo);
  if (reply.link && !busy()) keepAnswered();
  if (question.ask === "paper" && !wrong) return paper();
  if (reply.file) save(reply.fileName, reply.fileKind, reply.file);
  if (!question.quiet) announce(reply.announce);
  unsettle();
  if (!busy()) settleSoon();
  const place = document.getElementById(reply.focus) ?? (question.led ? find("#h-job") : null);
  if (place) reveal(place);
  else if (wrong && !feedback && (question.submitted || saving)) reveal(find("#errors"));
  if (idle() && book.id() !== planId) openLog(planId); // which was not to be had
  // With an error, or when nothing could be opened, the rest is of the plan whose answer stands, wherever that was.
  if (!saving) later(reply.more || due);
}

/**
 * Whether a reply would undo what was typed since it was asked for, or is of a
 * log that has changed. What a button does is asked for once more then, for what
 * the form holds now; until the typing rests.
 * @param {import("./questions.js").Question} question
 * @param {import("./questions.js").Reply} reply
 */
function late(question, reply) {
  if (question.action === "log-open") {
    if (question.plan === planId && question.text === book.kept(planId)) return false;
    openLog(planId);
    return true;
  }
  const stays = question.ask === "answer" ? !draws(reply, "ask") || sent === formText(planForm) : question.ask !== "feedback" || !draws(reply, "log") || noted === formText(logForm);
  if (!stays) askAgain(question);
  return !stays;
}

/** Whether a reply fills a place. @param {import("./questions.js").Reply} reply @param {string} place by its id */
function draws(reply, place) {
  return reply.fragments.some(({ id }) => id === place);
}
