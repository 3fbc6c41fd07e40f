// @ts-check
// Which question the planner has, and those that wait for it. How it is asked is
// the matter of planner.js, what a reply does to the page that of replies.js.

import { find } from "./places.js";
import { planner } from "./planner.js";

/**
 * @typedef {{fragments: {id: string, html: string}[], errors: {path: string, text: string}[], link: string,
 *   title: string, announce: string, focus: string, at: string, owed: string[], order: string[], first: string, more: number, number: number, fileName: string, fileKind: string, file: string}} Reply
 * @typedef {{ask: string, text?: string, action?: string, clock?: string, step?: number, submitted?: boolean, quiet?: boolean, good?: string, plan?: string, link?: string, led?: boolean, back?: boolean, undo?: boolean, print?: string, to?: string}} Question
 */

/** Questions that wait. Only one is with the worker at a time. @type {Question[]} */
const queue = [];
/** The question that the worker has. @type {Question | undefined} */
let asked;
/** @type {ReturnType<typeof planner>} */
let worker;
/** Has the text of a question made. @type {(question: Question) => {ask: string, text: string}} */
let composing;

/**
 * Starts the planner.
 * @param {typeof composing} text of a question, made when it is sent
 * @param {object} told what comes of the question
 * @param {(question: Question, reply: Reply) => void} told.reply
 * @param {(question: Question) => void} told.again it is asked once more
 * @param {(question: Question) => void} told.lost there will be no reply
 * @param {(why: string, question: Question | undefined) => void} told.down the planner does not run
 */
export function begin(text, told) {
  const waiting = find("[data-wait]");
  const done = () => {
    const question = asked;
    asked = undefined;
    return /** @type {Question} */ (question);
  };
  waiting.hidden = false;
  composing = text;
  worker = planner({
    ready() {
      waiting.hidden = true;
      next();
    },
    reply(reply) {
      told.reply(done(), reply);
      next();
    },
    again() {
      waiting.hidden = false;
      if (asked) told.again(asked);
    },
    lost(overtaken) {
      const question = done();
      if (question && !overtaken) told.lost(question);
      next();
    },
    down(why) {
      waiting.hidden = true;
      told.down(why, done());
    },
  });
}

/**
 * Asks, now or when the worker is free. What the form holds is read when it
 * is sent, so a second change in the form needs no second question.
 * @param {Question} question
 */
export function ask(question) {
  const plain = queue.findIndex((q) => q.ask === "answer" && !q.action && !q.undo);
  if (plain >= 0 && question.ask === "answer" && !question.action && !question.undo) {
    question.submitted ||= queue[plain].submitted;
    queue.splice(plain, 1);
  }
  // A changed plan asks for the rest anew; a log only for its own answer.
  if (question.ask === "feedback") drop((q) => q.ask === "feedback" && !q.action);
  if (changes(question)) drop((q) => q.ask === "rest");
  queue.push(question);
  worker.wake();
  if (asked && overtakes(question, asked)) {
    question.submitted ||= asked.submitted;
    worker.overtake();
  }
  next();
}

/** Asks when nothing else is to be asked, and without waking a planner that is down. @param {Question} question */
export function askLast(question) {
  queue.push(question);
  next();
}

/** Asks once more, before all others, unless a newer question is for the same. @param {Question} question */
export function askAgain(question) {
  if (question.action || !queue.some((q) => q.ask === "answer")) queue.unshift(question);
}

function next() {
  if (asked || !worker.free()) return;
  asked = queue.shift();
  if (asked) worker.ask(composing(asked), asked.ask !== "rest");
}

/**
 * Whether the reply to a question is of no use once a newer one has been
 * asked. What a button does, and what is opened, is done first.
 * @param {Question} newer
 * @param {Question} older
 */
function overtakes(newer, older) {
  if (!changes(newer)) return false;
  if (moves(older)) return newer.ask !== "answer";
  return older.action ? older.action === "log-open" : !saves(older);
}

/** Those that wait are asked no more. @param {(question: Question) => boolean} which */
export function drop(which) {
  for (let i = queue.length; i--; ) if (which(queue[i])) queue.splice(i, 1);
}

/** Whether no question is on its way. */
export const idle = () => !asked;

/** The question, if there is one on its way, whose answer may be to another plan. */
export const busy = () => [asked, ...queue].find((question) => question && changes(question));

/** Whether the answer may be to another plan. @param {Question} question */
export const changes = (question) => question.ask === "answer" || moves(question);

/** Whether its reply is a file. @param {Question} question */
export const saves = (question) => ["save", "calendar", "parts", "cuts", "marks", "compare", "paper"].includes(question.ask);

/** Whether it is for another plan to stand on the page. @param {Question} question */
export const moves = (question) => ["open", "openFile", "restore"].includes(question.ask);
