/** What others will do: who is still there when it is our turn again. */
export { OwnOrders } from './orders.ts'
export { stillFree, type Waiting, type WaitingRequest } from './stillFree.ts'
