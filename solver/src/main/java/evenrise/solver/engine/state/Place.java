package evenrise.solver.engine.state;

/**
 * A spot in a panel for a breaker of a given number of poles.
 *
 * @param index position in {@link CompiledProject#places}
 * @param panel index of the panel
 * @param slot slot of the first pole, as people number it
 * @param slots every slot it takes, as project-wide indexes
 * @param phaseMask bit p is set where a pole touches phase p
 * @param takesSwitched whether every slot takes a switched breaker
 */
public record Place(int index, int panel, int slot, int[] slots, int phaseMask, boolean takesSwitched) {
    public int poles() {
        return slots.length;
    }

    @Override
    public boolean equals(Object other) {
        return this == other;
    }

    @Override
    public int hashCode() {
        return index;
    }

    @Override
    public String toString() {
        return "panel " + panel + " slot " + slot + " (" + poles() + " poles)";
    }
}
