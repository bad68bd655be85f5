/** What a piece of work in steps comes to, all steps done at once. */
export function toTheEnd<Value>(steps: Generator<unknown, Value>): Value {
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
}
