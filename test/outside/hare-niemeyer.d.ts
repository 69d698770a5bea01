/** What the checks use of hare-niemeyer, which carries no types of its own. */
declare module 'hare-niemeyer' {
  export default function apportion(
    votes: Readonly<Record<string, number>>,
    seats: number,
    draw?: boolean,
  ): Record<string, number>;
}
