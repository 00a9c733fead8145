// Refusals and planned steps arrive one by one; the lists they belong to appear when the run is through.
import { join } from 'node:path';
import type { PlannedStep } from '../advise/advice.js';
import type { Problem } from '../problem.js';
import { csvStart } from './csv-line.js';
import {
  calendarEnd,
  calendarEvent,
  calendarStart,
  recallLine,
  recallStart,
  recallsOf,
} from './recall.js';
import { type Shard, shardName } from './shard.js';
import { toFixColumns, toFixLines } from './to-fix.js';
import { openList } from './whole-file.js';

type Who = Parameters<typeof toFixLines>[0];

/** Opens to-fix.csv, recall.csv and recall.ics; lines go to disk as they come, so that no run is too long. */
export async function openLists(folder: string, shard: Shard, date: string) {
  const open = (name: string, start: string) =>
    openList(join(folder, shardName(name, shard)), start);
  const fix = await open('to-fix.csv', csvStart + toFixColumns);
  const recall = await open('recall.csv', recallStart);
  const calendar = await open('recall.ics', calendarStart);
  return {
    toFix: (who: Who, problems: readonly Problem[]) => fix.add(toFixLines(who, problems)),
    recall: async (stem: string, steps: readonly PlannedStep[]) => {
      for (const each of recallsOf(stem, steps)) {
        await recall.add(recallLine(each));
        await calendar.add(calendarEvent(each, date));
      }
    },
    finish: async () => {
      await calendar.add(calendarEnd);
      for (const list of [fix, recall, calendar]) await list.finish();
    },
    giveUp: async () => {
      for (const list of [fix, recall, calendar]) await list.giveUp();
    },
  };
}
