// What keepers write above their columns in Portuguese, without accents and in lower case.
// From memory, held by the example and by sheets of tests/notes: a word that is missing is asked about.
import type { Language } from '../language';

export const PORTUGUESE: Language = {
  headings: {
    date: 'data de preparo,feito em',
    jar: 'vidro',
    label: 'rotulo',
    seed: 'iniciado com,iniciado de,iniciado a partir de,semente,origem,inoculado com',
    amount: 'quantidade',
    milk: 'leite,tipo de leite',
    'milk amount': 'quantidade de leite',
    addition: 'adicao,adicional',
    'addition amount': 'quantidade de fibra',
    hours: 'duracao,incubacao',
    end: 'fim,hora fim',
    temperature: 'graus',
    set: 'consistencia,como ficou',
    whey: 'soro',
    smell: 'cheiro',
    colour: 'cor',
    spoiled: 'estragado',
    price: 'preco,custo',
    note: 'observacoes',
  },
  example: {
    'Feito em': 'date',
    'Vidro': 'jar',
    'Iniciado com': 'seed',
    'Quantidade': 'amount',
    'Leite': 'milk',
    'Adição': 'addition',
    'Duração': 'hours',
    'Graus': 'temperature',
    'Como ficou': 'set',
    'Cheiro': 'smell',
    'Observações': 'note',
  },
}; // prettier-ignore
