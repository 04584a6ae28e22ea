/**
 * N customers who think for an exponential time and then want one of c equal servers (the machine-repairman queue).
 *
 * Source: Gross & Harris, Fundamentals of Queueing Theory, 3rd ed. (1998), section 2.6 (finite-source queues).
 * @returns long-run averages: customers at the servers and waiting, rate of service, time from arrival to departure and wait
 */
export function machineRepairman(of: { customers: number; servers: number; thinking: number; service: number }) {
  const { customers, servers, thinking, service } = of
  const weights = [1]
  for (let n = 1; n <= customers; n++)
    weights.push((weights[n - 1]! * (customers - n + 1) * service) / (thinking * Math.min(n, servers)))
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const states = weights.map((weight) => weight / total)
  const present = states.reduce((sum, p, n) => sum + n * p, 0)
  const waiting = states.reduce((sum, p, n) => sum + Math.max(0, n - servers) * p, 0)
  const rate = (customers - present) / thinking
  return { states, present, waiting, rate, time: present / rate, wait: waiting / rate }
}
