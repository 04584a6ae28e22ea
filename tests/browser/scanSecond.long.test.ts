import { scanScreens } from './axe.ts'
import { screens } from './screens.ts'

scanScreens(8, screens.length)
