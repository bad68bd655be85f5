import { lengthText, unitWord } from '$lib/project/lengthText.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { Grip, Handle } from './handle.ts';

/** `430 from the middle of the desk`: a number of a handle with what it says. `value`: as the project holds it. */
export const gripText = ({ says, sign }: Grip, value: number, display: LengthDisplay): string =>
  `${lengthText(sign * value, display)} ${says}`;

/** What a screen reader says of a handle: its name and its numbers. */
export function spokenHandle({ name, across, up }: Handle, display: LengthDisplay): string {
  const numbers = [across, up].flatMap((grip) =>
    grip ? [`${lengthText(grip.sign * grip.value, display)} ${unitWord(display.length)} ${grip.says}`] : [],
  );
  return `${name}: ${numbers.join(', ')}`;
}
