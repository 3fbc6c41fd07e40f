// @ts-check
// The life of the worker that the planner runs in: it is started, asked one
// question at a time, and replaced when it hangs, dies or works on what nobody
// waits for any more. What is asked, and what a reply means, is the page's
// matter.

import { site, trusted } from "./site.js";

// The page's clock is used for these limits alone, never for a result. It is
// counted in half seconds in which the page was awake: a device that slept
// must not take its worker for a dead one.
const tick = 500;
const limits = {
  overtaken: 3, // what takes this long is given up for a newer question; to start anew takes a tenth of it
  unheard: 10, // a worker that lives says at once that it has begun
  // The largest plans take 2 s on a machine of 2026, about two and a half times
  // that as WebAssembly, and four times that on a slow phone.
  reply: 40,
  start: 40, // from the program that was compiled before
  download: 240, // 0.8 MB over a bad line
};
const most = 3; // deaths in a row, without a reply in between
const rest = 10_000; // ms after which what has failed for good is tried again, if somebody asks

/**
 * @param {object} told what the page is told
 * @param {() => void} told.ready it can be asked
 * @param {(reply: any) => void} told.reply to the question that it has
 * @param {() => void} told.again the planner has failed at the question, which is asked once more
 * @param {(overtaken: boolean) => void} told.lost there will be no reply: a newer question waits, or it has failed twice
 * @param {(why: string) => void} told.down it does not run, nor will until it is asked again after a while
 */
export function planner(told) {
  /** @type {Worker | undefined} */
  let worker;
  /** The program as the first worker compiled it. @type {WebAssembly.Module | undefined} */
  let program;
  /** The question that it has, or gets when it is ready. @type {{ask: string, text: string} | undefined} */
  let question;
  let ready = false;
  let begun = false;
  /** Whether the question is worth a second try. */
  let again = false;
  let overtaken = false;
  let deaths = 0;
  /** Whether its files were asked for past every cache. */
  let mended = false;
  let down = false;
  let ticks = 0;
  let ticking = 0;
  let downSince = 0;
  let downFor = "";

  start();
  return {
    free: () => ready && !question,
    /**
     * Asks the planner, which must be free.
     * @param {{ask: string, text: string}} asked
     * @param {boolean} worth whether it is asked once more when no reply comes
     */
    ask(asked, worth) {
      question = asked;
      again = worth;
      overtaken = false;
      send();
    },
    /** Says that a newer question waits, and that nobody needs the reply to this one. */
    overtake() {
      overtaken = true;
      look();
    },
    /** Tries once more what has failed for good, if that is a while ago, or says again that it has. */
    wake() {
      if (!down) return;
      if (performance.now() - downSince < rest) return told.down(downFor);
      deaths = 0;
      mended = down = false;
      start();
    },
  };

  function start() {
    ready = false;
    // @ts-ignore: begun by early.js, and taken once
    const own = (worker = window.early ?? new Worker(trusted.createScriptURL(site.worker ?? "")));
    // @ts-ignore
    delete window.early;
    /** What one that was replaced has still to say is not heard. @param {(event: any) => void} hear */
    const only = (hear) => (/** @type {Event} */ event) => own === worker && hear(event);
    own.addEventListener("message", only(({ data }) => hear(data)));
    own.addEventListener("error", only((event) => fault(event.message || "its file cannot be loaded")));
    own.addEventListener("messageerror", only(() => fault("it cannot be understood")));
    own.postMessage({ program: program ?? new URL(site.program ?? "", document.baseURI).href, sum: site.sum, list: site.list });
    watch();
  }

  function send() {
    begun = false;
    worker?.postMessage(question);
    watch();
  }

  function stop() {
    worker?.terminate();
    worker = undefined;
    ready = false;
  }

  /** @param {any} data */
  function hear(data) {
    if (data.failed) return fault(data.failed);
    begun = true;
    if (data.begun) return;
    if (data.ready) {
      if (ready) return; // it was asked to start twice
      ready = true;
      program ??= data.program;
      if (question) send();
      else rests();
      return told.ready();
    }
    deaths = 0;
    question = undefined;
    rests();
    told.reply(data.reply);
  }

  /** Counts from now. */
  function watch() {
    ticks = 0;
    ticking ||= setInterval(() => {
      ticks++;
      look();
    }, tick);
  }

  function rests() {
    clearInterval(ticking);
    ticking = 0;
  }

  /** Whether it is too late for what is waited for. */
  function look() {
    if (!worker) return;
    if (overtaken && question && ticks >= (ready ? limits.overtaken : 0)) {
      if (ready) {
        stop();
        start();
      }
      lose(true);
    } else if (!ready) {
      if (ticks >= (program ? limits.start : limits.download)) fault("it does not start");
    } else if (ticks >= (begun ? limits.reply : limits.unheard)) {
      fault("it does not answer");
    }
  }

  /** What the worker cannot go on from. @param {string} why */
  function fault(why) {
    const blameless = !ready || !begun; // it was not the question
    if (blameless || ticks < limits.reply) deaths++; // nor only its length
    stop();
    if (!program && !mended) return mend();
    if (deaths > most || !program) {
      rests();
      question = undefined;
      down = true;
      downSince = performance.now();
      return told.down((downFor = why));
    }
    start();
    if (!question) return;
    if (overtaken) return lose(true);
    if (!again && !blameless) return lose(false);
    again &&= blameless;
    told.again();
  }

  /** What is kept of the worker's files, here or on the way, may be broken: they are loaded past every cache, once. */
  async function mend() {
    mended = true;
    rests();
    const signal = AbortSignal.timeout(limits.download * tick);
    await Promise.allSettled([site.worker, site.program].map(async (file) => (await fetch(file ?? "", { cache: "reload", signal })).arrayBuffer()));
    start();
  }

  /** @param {boolean} newer */
  function lose(newer) {
    question = undefined;
    told.lost(newer);
  }
}
