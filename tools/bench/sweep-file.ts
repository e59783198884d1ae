/** A comma file of one long sweep with ten columns, as bytes; the same every time. */
export function sweepFile(rows: number): Uint8Array {
  const lines = [
    'Time (s),Engine speed (rpm),Torque (N·m),Boost (kPa),Lambda,Throttle (%),Oil (°C),Coolant (°C),Charge (°C),Fuel flow (kg/h)',
  ];
  for (let row = 0; row < rows; row += 1) {
    const share = row / rows;
    const speed = 2500 + 4000 * share;
    const ripple = Math.sin(row * 0.7);
    const torque = 500 + 80 * Math.sin(Math.PI * share) + ripple;
    lines.push(
      [
        (row / 1000).toFixed(3),
        (speed + ripple).toFixed(1),
        torque.toFixed(2),
        (80 * share * share).toFixed(2),
        '0.82',
        '99.6',
        (92 + share).toFixed(1),
        (84 + share).toFixed(1),
        (40 + 20 * share).toFixed(1),
        (40 + 60 * share).toFixed(2),
      ].join(','),
    );
  }
  return new TextEncoder().encode(`${lines.join('\n')}\n`);
}
