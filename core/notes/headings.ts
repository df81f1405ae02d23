// What a column's heading means, in the words and languages keepers write in.
import type { NoteColumn } from '../contract';
import { plain } from '../quantities';

/** Phrases without accents and in lower case; English, German, French, Spanish, Italian, Dutch, Portuguese, Swedish, Danish, Norwegian, Polish. */
const PHRASES: Readonly<Record<Exclude<NoteColumn, 'ignore'>, string>> = {
  date: 'date,day,made,made on,date made,date started,start date,batch date,when,day made,prepared,date prepared,started,started on,datum,tag,gemacht am,angesetzt am,hergestellt am,herstelldatum,ansatzdatum,ansatz,angesetzt,jour,date de fabrication,fait le,prepare le,fecha,dia,fecha de elaboracion,hecho el,data,giorno,fatto il,preparato il,data di preparazione,dag,gemaakt op,gemaakt,data de preparo,feito em,dato,gjord,lavet,laget,dzien,data produkcji,zrobione',
  jar: 'jar,jar letter,letter,jar no,jar nr,jar number,jar #,jar id,#,no,nr,number,which jar,glass,glas,glas nr,buchstabe,gefass,pot,bocal,lettre,no du pot,tarro,frasco,bote,letra,vasetto,barattolo,vaso,lettera,potje,pote,vidro,burk,bokstav,krukke,sloik,sloiki,litera,jars,which,tub,bottle,jar s,glaser,potten,pots,frascos,tarros,vasetti,burkar,code,jar code,jar name,kennung,kurzel,glas code',
  label: 'label,jar label,jar name,name,id,batch,batch name,batch no,batch number,batch id,batch/jar,batch jar,lot,run,etikett,bezeichnung,charge,ansatz nr,etiquette,nom,etiqueta,nombre,lote,etichetta,nome,lotto,naam,rotulo,etikette,namn,navn,sats,etykieta,nazwa,partia',
  seed: 'what went in,went in,started from,started with,seed,seeded from,seeded with,seeded by,seed jar,seed from,seed source,starter,starter from,starter used,starter jar,starter source,from,from jar,source,parent,parent jar,parents,mother,mother jar,inoculum,inoculated from,inoculated with,made from,culture,origin,came from,backslop from,taken from,what from,fed from,angesetzt mit,angesetzt aus,angeimpft mit,angeimpft aus,geimpft mit,beimpft mit,beimpft aus,gestartet mit,gestartet aus,gestartet von,impfgut,impfkultur,starterkultur,aus,aus glas,herkunft,mutterglas,mutter,kultur,ausgangsglas,ensemence avec,ensemence a partir de,ensemencement,semence,ferment,levain,origine,parti de,a partir de,depuis,issu de,souche,pot mere,iniciado con,iniciado de,iniciador,semilla,inoculo,inoculado con,origen,a partir de,fermento,sembrado con,cultivo,desde,madre,partito da,iniziato da,iniziato con,avviato da,avviato con,seminato con,seme,innesto,inoculato con,origine,da,gestart met,gestart van,gestart vanuit,geent met,ent,entsel,van,uit,herkomst,moeder,iniciado com,iniciado de,iniciado a partir de,semente,origem,inoculado com,startad fran,startad med,startat fran,ympad med,ymp,fran,ursprung,kultur fran,moderburk,startet fra,startet med,podet med,podet fra,podning,poding,fra,oprindelse,opphav,z czego,zaczyn,zaszczepiono,zaszczepione z,zaszczepiono z,zakwas,startowano z,pochodzenie,matka,z,product,products,probiotic,capsules used,produkt,produit,producto,prodotto,product used,seed code',
  amount: 'amount,seed amount,amount of seed,how much,how much seed,qty,quantity,quantity of seed,starter amount,amount of starter,inoculum amount,seed volume,seed ml,starter volume,seed qty,dose,menge,wieviel,wie viel,impfmenge,startermenge,menge starter,quantite,combien,dose,quantite de semence,quantite de ferment,cantidad,cuanto,cantidad de semilla,quantita,quanto,dose,hoeveelheid,hoeveel,quantidade,mangd,hur mycket,mengde,maengde,hvor meget,hvor mye,ilosc,ile,ilosc zaczynu,dosage,scoop,scoops,spoonfuls,spoons,tablespoons,loffel,pieces,capsules,tablets,caps,no of capsules,number of capsules,stuck,kapseln,tabletten,gelules,capsulas',
  milk: 'milk,milk type,type of milk,kind of milk,which milk,dairy,milch,milchsorte,milchart,lait,type de lait,leche,tipo de leche,latte,tipo di latte,melk,soort melk,leite,tipo de leite,mjolk,mjolksort,maelk,maelketype,melketype,mleko,rodzaj mleka,base,liquid,dairy base,grundlage,base liquid',
  'milk amount': 'milk amount,amount of milk,milk volume,milk qty,milk quantity,milchmenge,menge milch,quantite de lait,volume de lait,cantidad de leche,quantita di latte,quantita latte,hoeveelheid melk,quantidade de leite,mjolkmangd,mangd mjolk,maelkemaengde,melkemengde,ilosc mleka',
  addition: 'fiber,fibre,fibers,fibres,added,addition,additions,additive,additives,add in,add ins,add-in,add-ins,extras,extra,prebiotic,prebiotics,prebiotic fibre,prebiotic fiber,with,stirred in,mix in,mix-in,ballaststoff,ballaststoffe,faser,fasern,zusatz,zusatze,zugabe,beigabe,zutat,ajout,ajouts,additif,additifs,prebiotique,fibra,fibras,anadido,aditivo,anadidos,prebiotico,aggiunta,aggiunte,additivo,toevoeging,toevoegingen,vezel,vezels,prebioticum,adicao,adicional,tillsats,tillsatser,tilsaetning,tilsetning,dodatek,dodatki,blonnik',
  'addition amount': 'fiber amount,fibre amount,amount of fiber,amount of fibre,addition amount,added amount,additive amount,prebiotic amount,fibre qty,fiber qty,ballaststoffmenge,zusatzmenge,menge zusatz,quantite de fibre,quantite de fibres,cantidad de fibra,quantita di fibra,quantita fibra,hoeveelheid vezel,quantidade de fibra,fibermangd,fibermaengde,fibermengde,ilosc blonnika',
  hours: 'hours,hour,hrs,hr,h,hold,hold h,hold hrs,hold hours,hours held,held,held for,hold time,holding time,time,duration,time held,incubation,incubation time,incubation hours,incubated,fermentation time,ferment time,ferment hours,fermented,length,how long,warm hours,hours warm,time in bath,hours in bath,days,stunden,std,dauer,zeit,haltezeit,haltedauer,warmhaltezeit,reifezeit,bebrutung,bebrutungszeit,wie lange,heures,duree,temps,duree de maintien,incubation h,horas,duracion,tiempo,horas de incubacion,incubacion,ore,durata,tempo,ore di incubazione,incubazione,uren,uur,duur,tijd,hoe lang,incubatie,duracao,incubacao,timmar,tid,timer,varighed,varighet,hur lange,godziny,godzin,czas,godz,jak dlugo,inkubacja,total hours,total time,hours total,time total,gesamtstunden',
  start: 'start,start time,started at,time started,time in,in,in at,put in,into bath,in bath,into warm,warm from,from time,begin,begin time,beginning,start of hold,hold start,beginn,anfang,startzeit,start um,rein,rein um,warm ab,debut,heure de debut,debut a,inicio,hora de inicio,hora inicio,inizio,ora inizio,ora di inizio,begin tijd,begintijd,start tid,starttid,start klokken,poczatek,start godz',
  end: 'end,end time,end date,end day,date ended,ended,ended at,time ended,time out,out,out at,taken out,taken out at,out of bath,finish,finished,finish time,finished at,stop,stopped,hold end,end of hold,chilled,chilled at,into fridge,to fridge,done,ende,endzeit,fertig,fertig um,raus,raus um,herausgenommen,enddatum,fin,heure de fin,date de fin,hora de fin,hora fin,fine,ora fine,ora di fine,einde,eindtijd,eind,fim,hora fim,slut,sluttid,sluttidspunkt,koniec',
  temperature: 'temp,temps f,temperature,degrees,deg,deg f,deg c,warmth,heat,bath,bath temp,bath temperature,hold temp,incubation temp,temp f,temp c,temperatur,grad,warme,badtemperatur,temperature du bain,degres,temperatura,grados,gradi,temperatuur,graden,graus,grader,stopnie,temperatura kapieli,f,c,how warm,how hot,warm,bath c,bath f,water temp,water temperature,wassertemperatur',
  set: 'how did it set,how it set,did it set,set,set up,result,results,firmness,consistency,thickness,outcome,how set,how thick,how was it,quality,body,konsistenz,festigkeit,ergebnis,wie fest,fest,stichfestigkeit,wie wurde es,wie ist es geworden,consistance,fermete,resultat,prise,tenue,comment a-t-il pris,consistencia,como quedo,como cuajo,cuajado,cuajo,resultado,firmeza,consistenza,risultato,compattezza,come e venuto,come si e rappreso,stevigheid,dikte,resultaat,consistentie,hoe dik,hoe stevig,consistencia,como ficou,konsistens,fasthet,fasthed,hur blev den,hvordan blev den,resultat,konsystencja,gestosc,wynik,efekt,jak wyszlo,how d it go,how did it go,how it went,how did it turn out,turned out,came out,how it came out,gel,gelled,curd,verdict,geworden,gelungen,wie geworden',
  ph: 'ph,ph value,ph wert,ph-wert,final ph,end ph,ph at end,valeur ph,valor ph,ph-varde,ph-verdi,acidity ph,ph waarde,wartosc ph',
  whey: 'whey,whey off,syneresis,molke,petit lait,petit-lait,lactoserum,suero,siero,wei,soro,vassle,valle,myse,serwatka',
  smell: 'smell,odour,odor,aroma,geruch,odeur,olor,odore,geur,cheiro,lukt,lugt,zapach',
  colour: 'color,colour,farbe,couleur,colore,kleur,cor,farg,farve,farge,kolor',
  texture: 'texture,mouthfeel,textur,textura,tekstur,struttura,tekstura,textuur,gefuge',
  tang: 'tang,sourness,taste,tartness,acidity,flavour,flavor,saure,geschmack,acidite,gout,acidez,sabor,acidita,gusto,sapore,smaak,zuurheid,syra,smak,smag,kwasowosc,surhet',
  volume: 'final volume,total volume,volume,jar volume,yield,endvolumen,gesamtvolumen,volumen,volume final,volumen final,volume finale,eindvolume,slutvolym,sluttvolum,objetosc',
  vessel: 'vessel,container,jar size,jar type,size,size of jar,glasgrosse,gefassgrosse,recipient,taille du pot,envase,recipiente,contenitore,potmaat,karl,beholder,naczynie,pojemnik',
  spoiled: 'spoiled,spoilt,discarded,bad,thrown out,tossed,threw out,off,verdorben,schlecht,weggeworfen,entsorgt,gate,perdu,jete,avarie,estropeado,descartado,malo,guasto,andato a male,buttato,bedorven,weggegooid,estragado,skamd,slangd,fordaervet,odelagt,kastet,zepsute,wyrzucone',
  price: 'price,cost,preis,kosten,prix,cout,precio,coste,costo,prezzo,prijs,preco,custo,pris,kostnad,cena,koszt',
  note: 'note,notes,comment,comments,remark,remarks,observation,observations,misc,memo,other,anything else,bemerkung,bemerkungen,notiz,notizen,anmerkung,anmerkungen,kommentar,kommentare,sonstiges,beobachtung,beobachtungen,remarque,remarques,commentaire,commentaires,nota,notas,observacion,observaciones,comentario,comentarios,osservazioni,commenti,commento,opmerking,opmerkingen,notities,notitie,observacoes,anteckning,anteckningar,kommentarer,bemaerkning,bemaerkninger,merknad,merknader,notat,notater,noter,uwagi,uwaga,notatki,komentarz',
}; // prettier-ignore

const EXACT = new Map<string, NoteColumn>();
for (const [meaning, phrases] of Object.entries(PHRASES)) {
  for (const phrase of phrases.split(',')) if (!EXACT.has(phrase)) EXACT.set(phrase, meaning as NoteColumn);
}
const BY_FIRST_WORD = new Map<string, { phrase: string; meaning: NoteColumn; count: number }[]>();
for (const [phrase, meaning] of EXACT) {
  const parts = phrase.split(' ');
  const first = parts[0] ?? '';
  BY_FIRST_WORD.set(first, [...(BY_FIRST_WORD.get(first) ?? []), { phrase, meaning, count: parts.length }]);
}
/** Words that mean something as a whole heading only: "Product code" is neither the seed nor the jar. */
const WHOLE_ONLY: ReadonlySet<string> = new Set(['code']);
const OF_A_CODE = /\b(?:codes?|numbers?|no|nr|id|sku|barcode|ean)\b/;
const PRODUCT_WORD = /^(?:products?|produkt|produit|producto|prodotto)$/;
/** A pH before the hold ended: never the pH of the jar. */
const EARLY_PH = /\b(?:early|start|initial|milk|before|seed|after \d+|at \d+|\d+ ?h)\b/;
/** Not hold hours: these are set times, and a set time is never read as hours held. */
const SET_TIME =
  /set time|time to set|hours to set|set (?:after|by)|gesetzt nach|fest nach|temps de prise|tiempo de cuajado/;

/** A heading without its unit, marks and accents. */
export function bareHeading(heading: string): string {
  return plain(heading)
    .replace(/[([{].*?[)\]}]/g, ' ')
    .replace(/[?:.!*"'_]/g, ' ')
    .replace(/°\s?[cf]?/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

/** What a heading means and how sure that is (3 the very word, 2 the word within a longer heading), or null. */
export function headingMeaning(heading: string): { meaning: NoteColumn; sure: 2 | 3 } | null {
  const whole = plain(heading)
    .replace(/[?:.!*"'_]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  if (SET_TIME.test(whole) || /^set \((?:h|hrs?|hours|std)\)$/.test(whole))
    return { meaning: 'note', sure: 3 };
  if (/\bph\b/.test(whole)) return { meaning: EARLY_PH.test(whole) ? 'note' : 'ph', sure: 3 };
  const bare = bareHeading(heading);
  if (/^°\s?[cf]$/.test(whole)) return { meaning: 'temperature', sure: 3 };
  for (const text of [
    whole,
    bare,
    bare.replace(/[,/-]?\s?(?:in )?(?:ml|cl|dl|l|g|tbsp|tsp|el|tl|h|hrs?|std|f|c)$/, '').trim(),
  ]) {
    const exact = EXACT.get(text);
    if (exact) return { meaning: exact, sure: 3 };
  }
  const said = bare.replace(/[/,;-]/g, ' ').split(/\s+/);
  let best: { meaning: NoteColumn; length: number } | null = null;
  for (const [at, word] of said.entries()) {
    for (const { phrase, meaning, count } of BY_FIRST_WORD.get(word) ?? []) {
      if (phrase.length <= (best?.length ?? 2) || WHOLE_ONLY.has(phrase)) continue;
      if (PRODUCT_WORD.test(phrase) && OF_A_CODE.test(bare)) continue;
      if (said.slice(at, at + count).join(' ') === phrase) best = { meaning, length: phrase.length };
    }
  }
  if (best) return { meaning: best.meaning, sure: 2 };
  // A heading that tells nothing but its unit.
  const unit = headingUnit(heading);
  if (unit === null || bare.length > 6) return null;
  if (/^(?:deg )?[cf]$/i.test(unit)) return { meaning: 'temperature', sure: 2 };
  if (/^(?:h|hrs?|hours|std)$/i.test(unit)) return { meaning: 'hours', sure: 2 };
  return VOLUME.test(plain(heading)) ? { meaning: 'amount', sure: 2 } : null;
}

/** Headings of notes whose text needs no heading before it. */
export const isNotes = (heading: string): boolean =>
  EXACT.get(bareHeading(heading)) === 'note' ||
  (headingMeaning(heading)?.sure === 2 && headingMeaning(heading)?.meaning === 'note');

const VOLUME = /^\(?(?:ml|cl|dl|tbsps?|tbs|tablespoons?|tsps?|el|tl|msk|spsk|cups?)\)?$/;
const UNIT_WORD =
  /^(?:ml|cl|dl|l|lit(?:er|re)s?|g|gr|grams?|kg|oz|fl\.? ?oz|tbsps?|tbs|tablespoons?|t|tsps?|teaspoons?|el|tl|msk|spsk|cups?|c|qts?|quarts?|pints?|gal|caps?|capsules?|pieces|pcs|stk|h|hrs?|hours?|std|stunden|days?|tage|d|min|f|deg f|deg c|fahrenheit|celsius|%)\.?$/i;

/** The unit a heading tells, as written in it: "Amount (ml)" → "ml", "Temp °C" → "C", "Hold h" → "h", "Tbsp" → "Tbsp". */
export function headingUnit(heading: string): string | null {
  const text = heading.trim();
  const degrees = /(?:°|\bdeg(?:rees)?\.?)\s?([CF])\b/i.exec(text)?.[1];
  if (degrees) return degrees.toUpperCase();
  const inside = [...text.matchAll(/[([{]\s*(?:in\s+)?([^)\]}]{1,20}?)\s*[)\]}]/g)].map(
    (found) => found[1] ?? '',
  );
  const told = inside.find((word) => UNIT_WORD.test(word));
  if (told) return /^fahrenheit$/i.test(told) ? 'F' : /^celsius$/i.test(told) ? 'C' : told;
  if (isUnit(text)) return text;
  return (
    /[\s,/_-](?:in\s+)?(ml|cl|dl|l|g|tbsp|tbs|T|tsp|EL|TL|cups?|msk|spsk|h|hrs?|hours|std|days?|tage|F|C|min|%)\.?$/i.exec(
      text,
    )?.[1] ?? null
  );
}

/** A cell that holds nothing but a unit, as under the headings of some tables. */
export const isUnit = (text: string): boolean =>
  UNIT_WORD.test(text.trim()) || /^°\s?[CF]$/i.test(text.trim());

/** The order of day and month a heading tells: "Date (dd/mm/yyyy)". */
export function headingDayOrder(heading: string): 'day first' | 'month first' | null {
  const text = plain(heading);
  if (/\b(?:d{1,2}|t{1,2}|j{1,2}|g{1,2})[./ -]?m{1,2}\b|dd[./-]?mm|jj[./-]mm|tt[./-]mm|gg[./-]mm/.test(text))
    return 'day first';
  return /m{1,2}[./-]d{1,2}/.test(text) ? 'month first' : null;
}

const NATIVE =
  /\b(?:datum|menge|milch|stunden|temperatur|lait|duree|quantite|remarques|leche|cantidad|horas|fecha|latte|quantita|ore|hoeveelheid|melk|uren|leite|quantidade|mjolk|mangd|timmar|maelk|mengde|timer|mleko|ilosc|godziny|glas|bemerkung\w*|notizen|uwagi)\b/;
/** Whether headings are in a language that writes a decimal comma and cooks in metric spoons. */
export const commaLanguage = (headings: readonly string[]): boolean =>
  headings.some((heading) => NATIVE.test(plain(heading)));
