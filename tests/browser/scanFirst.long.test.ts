import { scanScreens } from './axe.ts'

scanScreens(0, 8)
