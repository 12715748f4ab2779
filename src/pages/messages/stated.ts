import type { Form } from '../../http/received/form.js';

/** What a form states of a person; what it takes is checked where it is kept. */
export function statedIn(form: Form): unknown {
  const given = (name: string) => form.field(name).trim() || null;
  const [from, to] = [given('quietFrom'), given('quietTo')];
  return {
    name: form.field('name'),
    language: form.field('language'),
    email: given('email'),
    webhook: given('webhook'),
    weekly: given('weekly') === null ? null : Number(given('weekly')),
    quiet: from === null && to === null ? null : { from, to },
    subjects: form.all('subjects'),
  };
}
