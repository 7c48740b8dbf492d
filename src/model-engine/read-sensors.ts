/** What the sensors of the plant read: with their errors, planted biases and lags. */
import { flowOf, signalAt } from "./hot-wire-meter.ts";
import type { Plant } from "./plant.ts";
import type { PreparedEngine } from "./prepared-engine.ts";

export function readSensors(e: PreparedEngine, plant: Plant, dt: number): void {
  const { sensors, air } = plant;
  const { parts } = e.engine;
  sensors.speed = plant.speed;
  if (e.meter !== null && e.design.meter !== null) {
    const share = 1 - Math.exp(-dt / e.design.meter.lag);
    plant.meterVoltage += (signalAt(e.meter, plant.meterFlow) - plant.meterVoltage) * share;
    sensors.meterReading = flowOf(e.meter.law, plant.meterVoltage);
  }
  const { aboutAmbient, aboutZero } = e.faults.pressureScale;
  const felt = air.pressure2 + aboutAmbient * (air.pressure2 - e.ambient.pressure) + aboutZero * air.pressure2;
  sensors.pressure = felt + parts.pressureBias + e.faults.pressureBias;
  sensors.barometer = e.ambient.pressure + parts.barometerBias + e.faults.barometerBias;
  const place = {
    meter: plant.intakeTemperature,
    manifold: air.temperature2,
    "after-cooler": air.temperature1,
  }[e.design.intakeTemperatureAt];
  const wanted = place + parts.temperatureBias + e.faults.temperatureBias;
  sensors.intakeTemperature += (wanted - sensors.intakeTemperature) * (1 - Math.exp(-dt / 4));
  sensors.coolant = plant.coolant;
  sensors.lambda = plant.exhaust.atProbe + parts.lambdaBias + e.faults.lambdaBias;
}
