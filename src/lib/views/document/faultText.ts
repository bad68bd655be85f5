import { faultLine, type Fault } from '$lib/project/fault.ts';

/** A fault in a list of faults; of the document as a whole without a place, which would be none. */
export const faultText = (fault: Fault): string => (fault.pointer === '' ? fault.message : faultLine(fault));
