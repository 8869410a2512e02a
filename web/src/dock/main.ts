import '@fontsource-variable/source-sans-3/wght.css'
import { mount } from 'svelte'
import '../style/tokens.css'
import '../style/base.css'
import Dock from './Dock.svelte'

mount(Dock, { target: document.getElementById('page')! })
