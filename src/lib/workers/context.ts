import { createContext } from 'svelte';
import { JobClient, type StartWorker } from './client.svelte.ts';
import type { ComparedSubject } from './jobs.ts';
import { LayoutSearch } from './layoutSearch.svelte.ts';
import { SheetSearch } from './sheetSearch.svelte.ts';

/** The clients of all jobs. The frame provides them, so that answers stay from page to page. */
export class Clients {
  readonly findings: JobClient<'findings'>;
  readonly sound: JobClient<'sound'>;
  readonly listeningArea: JobClient<'listening-area'>;
  /** One for each plane: a map of one does not wait for one of the other. */
  readonly slices: Readonly<Record<'plan' | 'side', JobClient<'slice'>>>;
  readonly sheets: SheetSearch;
  readonly search: LayoutSearch;
  readonly place: JobClient<'place'>;
  readonly compare: JobClient<'compare', ComparedSubject>;
  /** By the sheets alone: what is quickly known does not wait for them. */
  readonly compareSheets: JobClient<'compare', ComparedSubject>;
  readonly sweep: JobClient<'sweep'>;
  readonly sure: JobClient<'sure'>;
  /** Of a file, whatever stands for it in the page. */
  readonly response: JobClient<'response', object>;
  readonly heard: JobClient<'heard'>;

  constructor(start: StartWorker) {
    this.findings = new JobClient('findings', start);
    this.sound = new JobClient('sound', start);
    this.listeningArea = new JobClient('listening-area', start);
    this.slices = { plan: new JobClient('slice', start), side: new JobClient('slice', start) };
    this.sheets = new SheetSearch(start);
    this.search = new LayoutSearch(start);
    this.place = new JobClient('place', start);
    this.compare = new JobClient('compare', start);
    this.compareSheets = new JobClient('compare', start);
    this.sweep = new JobClient('sweep', start);
    this.sure = new JobClient('sure', start);
    this.response = new JobClient('response', start);
    this.heard = new JobClient('heard', start);
  }
}

export const [useClients, provideClients] = createContext<Clients>();
