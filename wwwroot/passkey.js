// The button that asks the browser for a passkey. It puts the answer into the form and sends it; all else is the server's.

const forms = document.querySelectorAll('form.passkey')
forms.forEach(prepare)

function prepare(form) {
  const button = form.querySelector('button')
  const words = form.querySelector('[role=status]')
  const why = whyNot(form.dataset.domain)
  words.textContent = why ?? ''
  button.disabled = why !== null
  button.addEventListener('click', () => ask(form, button, words))
}

/** Why no passkey is to be had here, in words; null where one is. */
function whyNot(domain) {
  const host = location.hostname
  if (!window.PublicKeyCredential?.parseRequestOptionsFromJSON) {
    return window.isSecureContext
      ? 'This browser cannot use passkeys. Sign in with a password.'
      : 'Passkeys need https, or localhost on the machine itself. Sign in with a password.'
  }
  if (/^[\d.]+$|:|^\[/.test(host)) return `Passkeys need a name in the address bar, not a number: open the site as ${domain}.`
  if (host !== domain && !host.endsWith(`.${domain}`)) return `Passkeys of this site belong to ${domain}; this page was opened as ${host}.`
  return null
}

async function ask(form, button, words) {
  const options = JSON.parse(form.dataset.options)
  button.disabled = true
  words.textContent = 'Waiting for the device …'
  try {
    const credential = form.dataset.creates
      ? await navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(options) })
      : await navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(options) })
    form.querySelector('[name="Form.Credential"]').value = JSON.stringify(credential)
    form.requestSubmit()
  } catch (fault) {
    button.disabled = false
    words.textContent = wordsOf(fault)
  }
}

function wordsOf(fault) {
  if (fault.name === 'InvalidStateError') return 'This device has a passkey for your account already.'
  if (fault.name === 'NotAllowedError') return 'No passkey was given: it was put off, it took too long, or this device has none for this site.'
  return `The device gave no passkey (${fault.name}). Try again, or sign in with a password.`
}
