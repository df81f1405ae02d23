// What of a text is measured and not said: figures with their unit, money, days, times of day, names of pictures.
import { withoutSureDays } from './days';
import { WEEKDAY } from './weekdays';

/** Units, money and halves of the day that stand at a figure. */
const UNITS = String.raw`ml|cl|dl|l|mg|g|kg|oz|lb|h|hrs?|hours?|std|stunden?|heures?|horas?|uur|timmar|timer|min|days?|tage?n?|d|tbsps?|tbs|tsps?|cups?|el|tl|msk|spsk|am|pm|a|p|a\.m\.?|p\.m\.?|uhr|ph|deg|grad|c|f|x|eur|euros?|usd|gbp|chf|kr|cent|pence`;
const FIGURES = new RegExp(
  [
    String.raw`(?<!\S)[\p{L}\p{N}_.()-]+\.(?:jpe?g|png|heic|webp|gif|mov|mp4|pdf)(?!\S)`,
    String.raw`[\d½¼¾⅓⅔]\s*(?:°\s*[cf]?|${UNITS})(?![\p{L}\p{N}])`,
  ].join('|'),
  'giu',
);
const WEEKDAY_OF_FIGURES = new RegExp(String.raw`(?<![\p{L}\p{N}])${WEEKDAY}\.?,?\s+(?=\d)`, 'giu');

/** A plain text without what is measured in it. */
export const withoutMeasured = (text: string): string =>
  /\d|[½¼¾⅓⅔]/.test(text)
    ? withoutSureDays(text.replace(WEEKDAY_OF_FIGURES, ' ')).replace(FIGURES, ' ')
    : text.replace(FIGURES, ' ');
