/** A binary min-heap of (cost, state) pairs on typed arrays; a state may be in it more than once. */
export class CostHeap {
  private costs = new Float64Array(1024);
  private states = new Int32Array(1024);
  size = 0;

  push(cost: number, state: number): void {
    if (this.size === this.costs.length) this.grow();
    let at = this.size++;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (this.costs[parent] <= cost) break;
      this.costs[at] = this.costs[parent];
      this.states[at] = this.states[parent];
      at = parent;
    }
    this.costs[at] = cost;
    this.states[at] = state;
  }

  /** Removes the cheapest; throws on an empty heap. */
  pop(): { cost: number; state: number } {
    if (this.size === 0) throw new Error('the heap is empty');
    const top = { cost: this.costs[0], state: this.states[0] };
    const cost = this.costs[--this.size];
    const state = this.states[this.size];
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= this.size) break;
      if (child + 1 < this.size && this.costs[child + 1] < this.costs[child]) child++;
      if (this.costs[child] >= cost) break;
      this.costs[at] = this.costs[child];
      this.states[at] = this.states[child];
      at = child;
    }
    this.costs[at] = cost;
    this.states[at] = state;
    return top;
  }

  private grow(): void {
    const costs = new Float64Array(this.costs.length * 2);
    costs.set(this.costs);
    this.costs = costs;
    const states = new Int32Array(this.states.length * 2);
    states.set(this.states);
    this.states = states;
  }
}
