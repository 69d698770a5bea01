/** What can happen to a make-along: everybody makes her own, after a teacher's, part by part. The list of events is the truth. */
import type { Stamp } from '../base/history.ts';
import type { Ball, Gauge } from '../base/quantity.ts';
import type { BlanketSpec } from '../blanket/pieces.ts';

/** What is done in a part; its rows and motifs are read off the blanket, hers or the teacher's. */
export const WORKS = ['swatch', 'first', 'motifs', 'ends', 'laying-out', 'joining', 'border', 'own'] as const;
export type Work = (typeof WORKS)[number];

export interface Part {
  /** Stays its own whatever is added, moved or removed; what people read is its place in the list. */
  readonly id: number;
  readonly title: string;
  /** The day it is given out, YYYY-MM-DD. */
  readonly from: string;
  readonly work: Work;
  /** What the teacher says of it, beside what follows from the work. */
  readonly asks?: string;
}

/** The teacher's blanket as it was when the make-along was opened: later changes of hers move nobody's goal. */
export interface AlongPlan extends BlanketSpec {
  readonly name: string;
  readonly columns: number;
  readonly rows: number;
  /** Motifs of each kind. */
  readonly counts: readonly number[];
  /** What it was laid by, so that another size continues it. */
  readonly setting: string;
  /** The hour of the day at which a part is given out, in this time zone (IANA). */
  readonly hour: number;
  readonly zone: string;
  readonly parts: readonly Part[];
}

/** What a maker works with, as far as it is other than the teacher's. */
export interface Way {
  readonly gauge?: Gauge;
  /** mm */
  readonly hook?: number;
  readonly ball?: Ball;
  /** What one finished motif of the first kind measures, cm. */
  readonly side?: number;
  /** Her colour for each of the teacher's. */
  readonly colours: readonly { readonly of: string; readonly hers: string }[];
  /** The size she wishes for, cm. */
  readonly width?: number;
  readonly height?: number;
  /** Stitches a minute. */
  readonly perMinute?: number;
  /** Whether the others may see how far she is, by name. */
  readonly named: boolean;
}

/** What happened, without when; whoever did it is the maker it is about, unless another is named. */
export type Happening =
  | { readonly did: 'opened'; readonly name: string; readonly plan: AlongPlan }
  | ({ readonly did: 'joined'; readonly name: string } & Way)
  | { readonly did: 'left' }
  | { readonly did: 'done'; readonly part: number }
  | {
      readonly did: 'stuck';
      readonly part: number;
      readonly row?: number;
      /** The slip that her counts tell of, in the words of what is checked. */
      readonly slip?: string;
      /** What she counted, the last of them in `row`. */
      readonly counts?: readonly number[];
      readonly words?: string;
      /** Whether she asks to be helped, by name. */
      readonly help: boolean;
    }
  | { readonly did: 'part-added'; readonly part: Part }
  | {
      readonly did: 'part-changed';
      readonly part: number;
      readonly title?: string;
      readonly asks?: string;
      readonly from?: string;
      /** By how many days the parts after it move with it. */
      readonly after?: number;
    }
  | { readonly did: 'part-removed'; readonly part: number }
  | { readonly did: 'hour-set'; readonly hour: number; readonly zone: string }
  /** It is about to be posted: from now on it may have gone out. */
  | { readonly did: 'claimed'; readonly part: number }
  | { readonly did: 'posted'; readonly part: number; readonly channel?: string; readonly message?: string }
  /** The platform would not have it: it did not go out. */
  | { readonly did: 'not-posted'; readonly part: number }
  /** The teacher takes it back, or has it posted anew. */
  | { readonly did: 'taken-back'; readonly part: number }
  | { readonly did: 'post-anew'; readonly part: number }
  /** The message of a part that was taken back is gone. */
  | { readonly did: 'message-gone'; readonly part: number }
  | { readonly did: 'offered-over'; readonly to: string; readonly name: string }
  | { readonly did: 'handed-over'; readonly to: string; readonly name: string }
  | { readonly did: 'closed' }
  | { readonly did: 'reopened' }
  /** Event number `event` (counted from 0) no longer counts. */
  | { readonly did: 'undone'; readonly event: number };

export type AlongEvent = Happening & Stamp;

/** Who posts a part on its day: no person, and no room makes such an id of a name. */
export const POSTER = 'the.clock';
