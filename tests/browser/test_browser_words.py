"""What a script says in another language is what the program says, message by message."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from crestcut.base.language import catalogue, words_of
from test_language import filled

SOURCE = Path(__file__).parents[2] / "pipeline/crestcut/report/pages/viewer/src/words.js"
CALL = "([told, texts]) => { %s\n const say = speaker(told); return texts.map(say); }"


def test_scripts_say_what_the_program_says(browser: Any) -> None:
    words = words_of("de", "DE")
    texts = [filled(english, seed) for seed, english in enumerate(sorted(catalogue("de")))]
    texts += [text[:1].upper() + text[1:] for text in texts]  # as a sentence begins
    texts += ["1,234.5 m", "1,234 m"]
    texts += ["Stop. Nothing. 1.5 mm", "5 ft 3 1/2 in", "a: b; c", "12.5 mm", " Stop. "]
    told = {"language": words.language, "decimal": words.decimal, "messages": words.messages}
    tab = browser.new_page()
    said = tab.evaluate(CALL % SOURCE.read_text(encoding="utf-8").replace("export ", ""), [told, texts])
    tab.close()
    differ = [(t, words.say(t), s) for t, s in zip(texts, said, strict=True) if words.say(t) != s]
    assert not differ, json.dumps(differ[:3], ensure_ascii=False)
