import '@fontsource-variable/source-sans-3/wght.css'
import '@fontsource-variable/source-sans-3/wght-italic.css'
import { mount } from 'svelte'
import './style/tokens.css'
import './style/base.css'
import './style/print.css'
import App from './shell/App.svelte'

mount(App, { target: document.getElementById('page')! })
