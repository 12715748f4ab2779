/// <reference lib="dom" />
// A button beside what is to be taken along; without this script it is selected and copied by hand.
for (const button of document.querySelectorAll<HTMLButtonElement>('.to-copy button')) {
  const field = button.parentElement?.querySelector('input');
  if (!field) continue;
  button.hidden = false;
  button.addEventListener('click', async () => {
    field.select();
    // Browsers give the clipboard to secure pages only; elsewhere the selection stands ready for Ctrl-C.
    await navigator.clipboard?.writeText(field.value);
    if (navigator.clipboard) button.textContent = button.dataset.copied ?? button.textContent;
  });
}
