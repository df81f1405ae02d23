// What keepers write above their columns in Swedish, without accents and in lower case.
// From memory, held by the example and by sheets of tests/notes: a word that is missing is asked about.
import type { Language } from '../language';

export const SWEDISH: Language = {
  headings: {
    jar: 'burk,bokstav,burkar',
    label: 'etikette,namn,sats',
    seed: 'startad fran,startad med,startat fran,ympad med,ymp,fran,ursprung,kultur fran,moderburk',
    amount: 'mangd,hur mycket',
    milk: 'mjolk,mjolksort',
    'milk amount': 'mjolkmangd,mangd mjolk',
    addition: 'tillsats,tillsatser',
    'addition amount': 'fibermangd',
    hours: 'timmar,tid,hur lange',
    start: 'sat i,satt inn,satt in,insatt,ind,inn,start tid,starttid',
    end: 'ut,uttagen,tagen ut,slut,sluttid,sluttidspunkt',
    temperature: 'grader',
    set: 'konsistens,fasthet,hur blev den',
    ph: 'ph-varde',
    whey: 'vassle',
    smell: 'lukt',
    colour: 'farg',
    tang: 'syra,smak',
    volume: 'slutvolym',
    vessel: 'karl',
    spoiled: 'skamd,slangd',
    price: 'kostnad',
    note: 'anteckning,anteckningar,kommentarer',
  },
  example: {
    'Burk': 'jar',
    'Ympad med': 'seed',
    'Mängd': 'amount',
    'Mjölk': 'milk',
    'Tillsats': 'addition',
    'Timmar': 'hours',
    'Grader': 'temperature',
    'Konsistens': 'set',
    'Lukt': 'smell',
    'Anteckningar': 'note',
  },
}; // prettier-ignore
