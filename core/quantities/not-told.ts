// Cells that tell nothing: what they are for is not there, or is not known.
import { plain } from './tidy-text';

/** Said to be none: "-", "n/a", "keine". */
export const isNothing = (text: string): boolean =>
  /^(?:-+|none|no|nil|#?n\/?a|#[a-z]+[!?]|null|nothing|nix|keine?s?|nichts|ohne|aucune?|rien|sans|non|ningun[oa]?|nada|sin|nessun[oa]?|niente|senza|geen|niets|nenhum[a]?|sem|ingen|inget|intet|brak|bez)$/.test(
    plain(text),
  );

/** Said not to be known, whatever it is said of: "?", "TBD", "not measured". */
export const isUnknown = (text: string): boolean =>
  /^(?:\?+|not (?:measured|taken|tested|noted|recorded|checked|known|yet)|unmeasured|(?:still |yet |past )?unknown|no (?:idea|clue)|don'?t (?:know|remember)|not sure|can'?t remember|weiss (?:ich )?nicht|keine ahnung|t\.?b\.?[da]\.?|forgot(?:ten)?(?: to .*)?|didn'?t (?:measure|check|look|note)|n\.?d\.?|k\.? ?a\.?|nicht (?:gemessen|notiert|bekannt)|unbekannt|vergessen|pas mesuree?|non mesuree?|inconnue?|oublie|no medid[oa]|desconocid[oa]|olvide|non misurat[oa]|dimenticato|niet gemeten|onbekend|vergeten|nao medid[oa]|ej matt|glomde|ikke malt|glemt|nie (?:mierzono|zmierzono)|nieznan\w+)$/.test(
    plain(text),
  );
