// What can be seen: how elements lie on the screen.

/**
 * Elements that reach beyond the right edge, when the page can be scrolled sideways.
 * @param {import("puppeteer-core").Page} page
 * @returns {Promise<string[]>}
 */
export function overflow(page) {
  return page.evaluate(() => {
    const root = document.scrollingElement;
    if (!root || root.scrollWidth <= innerWidth) return [];
    const wide = [...document.body.querySelectorAll("*")].filter((e) => {
      if (e.closest(".scroll, svg, .out, pre")) return false;
      return e.getBoundingClientRect().right > innerWidth + 0.5;
    });
    return [`${root.scrollWidth} px wide on ${innerWidth} px`, ...wide.slice(0, 5).map((e) => `${e.tagName} ${e.className} ${e.id}`)];
  });
}

/**
 * Controls that are too small for a wet thumb. Links within running text, and
 * what only a screen reader meets, are left out.
 * @param {import("puppeteer-core").Page} page
 * @param {number} least px
 * @returns {Promise<string[]>}
 */
export function small(page, least) {
  return page.evaluate((least) => {
    const found = [];
    for (const e of document.querySelectorAll("button, input, select, summary, label.button, a.button, nav a, .examples a, .fixes a, #errors a")) {
      let r = e.getBoundingClientRect();
      if (e.closest(".out") || e.type === "hidden" || !e.checkVisibility() || r.width === 0) continue;
      // A radio button is pressed with its label, too.
      if (e.type === "radio" || e.type === "checkbox") r = (e.closest("label") ?? e).getBoundingClientRect();
      if (e.type === "file") continue; // its label is the button
      if (r.height < least - 0.5 || (e.tagName !== "A" && r.width < least - 0.5)) found.push(`${e.tagName} ${e.id || e.textContent?.trim().slice(0, 30)}: ${r.width.toFixed(0)} x ${r.height.toFixed(0)}`);
    }
    return found;
  }, least);
}

/**
 * Texts that lie over each other.
 * @param {import("puppeteer-core").Page} page
 * @returns {Promise<string[]>}
 */
export function overlaps(page) {
  return page.evaluate(() => {
    const boxes = [];
    for (const e of document.querySelectorAll("h1, h2, h3, p, li, dt, dd, label, button, input, select, td, th, summary")) {
      if (e.closest(".out, svg, .bar, .skip, [hidden]") || e.classList.contains("out")) continue;
      if (e.querySelector("h1, h2, h3, p, li, dt, dd, label, button, input, select, td, th, summary")) continue;
      const r = e.getBoundingClientRect();
      if (!e.checkVisibility()) continue; // such as what is folded away
      if (r.width < 2 || r.height < 2) continue;
      const shut = e.closest(".scroll, .desk__ask, .bar"); // the bar lies above what is scrolled below it
      boxes.push({ e, r, shut });
    }
    const found = [];
    boxes.sort((a, b) => a.r.top - b.r.top);
    for (let i = 0; i < boxes.length; i++) {
      for (let j = i + 1; j < boxes.length && boxes[j].r.top < boxes[i].r.bottom - 1; j++) {
        const a = boxes[i].r;
        const b = boxes[j].r;
        // What scrolls in a box of its own may lie outside it unseen.
        if (boxes[i].shut !== boxes[j].shut) continue;
        if (Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1) {
          const name = (e) => `${e.tagName} ${e.id || e.textContent?.trim().slice(0, 30)}`;
          found.push(`${name(boxes[i].e)} under ${name(boxes[j].e)}`);
        }
      }
    }
    return found.slice(0, 10);
  });
}
