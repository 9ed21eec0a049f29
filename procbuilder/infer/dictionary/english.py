"""How the words of English are told apart: the language in which a narration is heard."""

from procbuilder.infer.lexicon import load

WORDS = load("en").words

singular, thing, is_plural = WORDS.singular, WORDS.as_spelled, WORDS.is_plural
