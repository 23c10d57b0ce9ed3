// All evidence weighed anew: years and makers of every piece follow what was recorded.
import { asProblem, call, ringAll } from './api';
import { tell, tellProblem } from './tell';

let busy = false;
export async function weigh() {
  if (busy) {
    return;
  }
  busy = true;
  tell('The evidence is being weighed; the pages may be used meanwhile.');
  try {
    await call('infer', {});
    ringAll();
    tell('Weighed: years and makers are as the record stands.');
  } catch (fault) {
    tellProblem(asProblem(fault));
  }
  busy = false;
}
