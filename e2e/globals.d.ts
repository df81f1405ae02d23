// What the page has, for code that tests run in it.
import type { Bridge } from '../renderer/state/ledger-calls';

declare global {
  interface Window {
    readonly jarline: Bridge;
  }
}
