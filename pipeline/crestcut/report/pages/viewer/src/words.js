// What a script writes into a page, in the reader's language: the twin of `base/language.py`, held to it by a test. The page itself
// comes translated; here every text that a script adds is looked up in the same catalogue as it appears, before it is painted.

const FIGURE = String.raw`(?:\d+ \d+/\d+|\d+/\d+|\d{1,3}(?:[,\u2009]\d{3})+(?:\.\d+)?|\d+(?:\.\d+)*)`;
const LENGTH = String.raw`(?: (?:mm|cm|m|ft ${FIGURE} in|ft|in(?! (?:${FIGURE}|the|a|which|all|it)\b))\b(?![²³2]))?`;
const QUANTITY = new RegExp(String.raw`(?<![\w.,])-?${FIGURE}${LENGTH}(?!\w)`, "g");
const HOLE = /\{(\d+|[a-z])\}/g;
const ENDS = /(?<=[.!?]) (?=[A-ZÄÖÜ"“'\d{])/;
const READ = ["aria-label", "alt", "placeholder", "title", "label"];
const AS_THEY_ARE = "bdi, code, kbd, script, style, textarea";
const escape = (text) => text.replace(/[.*+?^${}()|[\]\\/-]/g, "\\$&");
const letters = (text) => /\p{L}/u.test(text);

/** told : language, decimal, messages (English: translated). Returns what says a text in that language. */
export function speaker(told) {
  const { decimal, messages } = told;
  const open = Object.entries(messages)
    .filter(([english]) => /\{[a-z]\}/.test(english))
    .map(([english, said]) => {
      const bits = english.split(HOLE);
      const seen = bits.map((bit, k) =>
        k % 2 === 0 ? escape(bit) : /\d/.test(bit) ? `\\{(?<n${bit}>\\d+)\\}` : `(?<t${bit}>.+?)`,
      );
      return {
        begins: bits[0],
        seen: new RegExp(`^(?:${seen.join("")})$`),
        long: seen.join("").length,
        said,
      };
    })
    .sort((a, b) => b.long - a.long);

  function figure(text) {
    if (told.language === "de")
      text = text.replace(/(?<=\d) in\b/g, " Zoll").replace(/(?<=\d) ft\b/g, " Fuß");
    if (decimal === ".") return text;
    return text
      .replace(/(?<=\d),(?=\d{3})/g, "\u00a0")
      .replace(/(?<![\d.])(\d+)\.(\d+)(?![\d.])/g, `$1${decimal}$2`);
  }
  function lookedUp(keyed, figures) {
    if (Object.hasOwn(messages, keyed))
      return messages[keyed].replace(HOLE, (_, n) => figure(figures[Number(n)]));
    for (const { begins, seen, said } of open) {
      const found = keyed.startsWith(begins) && seen.exec(keyed);
      if (!found) continue;
      return said.replace(HOLE, (_, hole) =>
        /\d/.test(hole)
          ? figure(figures[Number(found.groups[`n${hole}`])])
          : say(found.groups[`t${hole}`].replace(HOLE, (_, n) => figures[Number(n)])),
      );
    }
    return null;
  }
  function whole(text) {
    const figures = text.match(QUANTITY) ?? [];
    let next = 0;
    const keyed = text.replace(QUANTITY, () => `{${next++}}`);
    const without = /[.:]$/.test(keyed) ? [[keyed.slice(0, -1), keyed.slice(-1)]] : [];
    for (const [tried, stop] of [[keyed, ""], ...without]) {
      const begun = tried.slice(0, 1);
      for (const first of new Set([begun, begun.toLowerCase(), begun.toUpperCase()])) {
        let found = lookedUp(first + tried.slice(1), figures);
        if (found === null) continue;
        if (first !== begun && begun === begun.toUpperCase()) found = found[0].toUpperCase() + found.slice(1);
        return found + (/[.!?]$/.test(found) ? "" : stop);
      }
    }
    return null;
  }
  function inParts(text) {
    const mark = /^[:;,.)]+ (?=\S)/.exec(text);
    if (mark) return mark[0] + say(text.slice(mark[0].length));
    for (const [parts, glue] of [
      [text.split("\n"), "\n"],
      [text.split(ENDS), " "],
    ])
      if (parts.length > 1) return parts.map(say).join(glue);
    for (const glue of [": ", "; ", " + "]) {
      const at = text.indexOf(glue);
      if (at < 0) continue;
      const parts = [text.slice(0, at), text.slice(at + glue.length)],
        found = parts.map(whole);
      if (found[0] || found[1]) return parts.map((part, k) => found[k] ?? inParts(part)).join(glue);
    }
    return text;
  }
  function say(text) {
    const around = text.trim();
    if (!letters(around.replace(QUANTITY, ""))) return text.replace(QUANTITY, figure);
    return text.replace(around, () => whole(around) ?? inParts(around));
  }
  return say;
}

/** Whatever a script adds to the page from here on; and, where scripts may have begun, what is in it already. told : see `speaker`. */
export function speak(root, told, begun) {
  const say = speaker(told);
  const text = (node) => {
    if (!node.data.trim() || node.parentElement?.closest(AS_THEY_ARE)) return;
    const said = say(node.data);
    if (said !== node.data) node.data = said;
  };
  const attributes = (element) => {
    for (const name of READ) {
      const had = element.getAttribute(name),
        said = had && say(had);
      if (had !== said) element.setAttribute(name, said);
    }
  };
  const all = (node) => {
    if (node.nodeType === Node.TEXT_NODE) return text(node);
    if (node.nodeType !== Node.ELEMENT_NODE) return;
    attributes(node);
    for (const child of node.childNodes) all(child);
  };
  const watch = new MutationObserver((seen) => {
    for (const one of seen) {
      if (one.type === "characterData") text(one.target);
      else if (one.type === "attributes") attributes(one.target);
      else one.addedNodes.forEach(all);
    }
  });
  watch.observe(root, {
    subtree: true,
    childList: true,
    characterData: true,
    attributes: true,
    attributeFilter: READ,
  });
  if (begun) all(root);
}
