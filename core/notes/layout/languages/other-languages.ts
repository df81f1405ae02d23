// Headings in languages that nobody here can vouch for beyond the whole sheets of tests/notes: the words of those sheets and
// no others, without accents and in lower case. A heading with another word is asked about.
import type { Headings } from '../language';

export const OTHER_LANGUAGES: readonly Headings[] = [
  // French
  {
    jar: 'pot', seed: 'ensemence avec,a partir de', amount: 'quantite,combien,dose,gelules', milk: 'lait',
    hours: 'heures,duree', set: 'consistance,resultat', note: 'remarques',
  },
  // Spanish
  {
    date: 'fecha', jar: 'tarro,frasco', seed: 'iniciado con,iniciado de,semilla,a partir de',
    amount: 'cantidad,capsulas', milk: 'leche', addition: 'fibra', hours: 'horas,incubacion',
    temperature: 'temperatura,grados', set: 'consistencia,como cuajo,cuajo,resultado', note: 'observaciones',
  },
  // Italian
  {
    date: 'data,data di preparazione', jar: 'vasetto', seed: 'partito da,iniziato da,da', amount: 'quantita,dose',
    milk: 'latte', hours: 'ore,durata', set: 'consistenza,risultato',
  },
  // Dutch
  {
    date: 'dag', jar: 'potje', seed: 'geent met', amount: 'hoeveelheid', milk: 'melk', addition: 'vezel',
    hours: 'uren', temperature: 'graden', set: 'stevigheid,dikte', note: 'opmerking,opmerkingen',
  },
  // Portuguese
  {
    seed: 'iniciado com,iniciado de', amount: 'quantidade', milk: 'leite', set: 'consistencia,como ficou',
    note: 'observacoes',
  },
  // Swedish
  {
    jar: 'burk', seed: 'startad fran,fran', amount: 'mangd', milk: 'mjolk', hours: 'timmar', temperature: 'grader',
    set: 'konsistens', note: 'anteckning,anteckningar',
  },
  // Danish
  {
    date: 'dato', seed: 'startet fra,podet med', amount: 'maengde', milk: 'maelk', hours: 'timer', start: 'sat ind',
    end: 'taget ud', temperature: 'varme', set: 'fasthed,resultat', note: 'bemaerkninger,noter',
  },
  // Polish
  {
    jar: 'sloik', seed: 'zaczyn', amount: 'ilosc', milk: 'mleko', addition: 'dodatek', hours: 'godziny,godzin',
    set: 'konsystencja', note: 'uwagi',
  },
]; // prettier-ignore
