// What keepers write above their columns in Spanish, without accents and in lower case.
// From memory, held by the example and by sheets of tests/notes: a word that is missing is asked about.
import type { Language } from '../language';

export const SPANISH: Language = {
  headings: {
    date: 'fecha,dia,fecha de elaboracion,hecho el',
    jar: 'tarro,frasco,bote,letra,frascos,tarros',
    label: 'etiqueta,nombre,lote',
    seed: 'iniciado con,iniciado de,iniciador,semilla,inoculo,inoculado con,origen,a partir de,fermento,sembrado con,cultivo,desde,madre,producto',
    amount: 'cantidad,cuanto,cantidad de semilla,capsulas',
    milk: 'leche,tipo de leche',
    'milk amount': 'cantidad de leche',
    addition: 'fibra,fibras,anadido,aditivo,anadidos,prebiotico',
    'addition amount': 'cantidad de fibra',
    hours: 'horas,duracion,tiempo,horas de incubacion,incubacion',
    start: 'inicio,hora de inicio,hora inicio',
    end: 'sacado,hora de fin,hora fin',
    temperature: 'calor,temperatura,grados',
    set: 'consistencia,como quedo,como cuajo,cuajado,cuajo,resultado,firmeza',
    ph: 'valor ph',
    whey: 'suero',
    smell: 'olor',
    tang: 'acidez,sabor',
    volume: 'volumen final',
    vessel: 'envase,recipiente',
    spoiled: 'estropeado,descartado,malo',
    price: 'precio,coste',
    note: 'nota,notas,observacion,observaciones,comentario,comentarios',
  },
  example: {
    'Fecha': 'date',
    'Frasco': 'jar',
    'Iniciado con': 'seed',
    'Cantidad': 'amount',
    'Leche': 'milk',
    'Fibra': 'addition',
    'Horas': 'hours',
    'Temperatura': 'temperature',
    'Consistencia': 'set',
    'Suero': 'whey',
    'Observaciones': 'note',
  },
}; // prettier-ignore
