/** What the checks use of culori, which carries no types of its own. */
declare module 'culori' {
  interface Rgb {
    mode: 'rgb';
    r: number;
    g: number;
    b: number;
  }
  interface Lab65 {
    mode: 'lab65';
    l: number;
    a: number;
    b: number;
  }
  export function rgb(colour: string): Rgb | undefined;
  export function lab65(colour: string): Lab65 | undefined;
  export function differenceCiede2000(): (one: Lab65, other: Lab65) => number;
  export function filterDeficiencyProt(severity?: number): (colour: Rgb) => Rgb;
  export function filterDeficiencyDeuter(severity?: number): (colour: Rgb) => Rgb;
  export function filterDeficiencyTrit(severity?: number): (colour: Rgb) => Rgb;
}
