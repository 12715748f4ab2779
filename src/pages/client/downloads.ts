/// <reference lib="dom" />
// Files dropped anywhere on the form are sent as if they had been picked; without this script picking still works.
const form = document.querySelector<HTMLFormElement>('#drop');
const input = form?.querySelector<HTMLInputElement>('input[type=file]');
const button = form?.querySelector<HTMLButtonElement>('button');

form?.addEventListener('dragover', (event) => {
  event.preventDefault();
  form.classList.add('over');
});
form?.addEventListener('dragleave', () => form.classList.remove('over'));
form?.addEventListener('drop', (event) => {
  event.preventDefault();
  form.classList.remove('over');
  const files = event.dataTransfer?.files;
  if (!input || files === undefined || files.length === 0) return;
  input.files = files;
  form.requestSubmit();
});
form?.addEventListener('submit', () => {
  if (!button) return;
  button.textContent = button.dataset.sending ?? button.textContent;
  button.setAttribute('aria-busy', 'true');
});
