package evenrise.model.sizing;

import evenrise.model.contract.Decimals;
import evenrise.model.electrical.conductor.ConductorSize;
import evenrise.model.project.Cable;
import java.util.Optional;

/**
 * One step of a ladder of standard sizes.
 *
 * @param amount in the unit of its text; of a cable the metal of a line conductor, all sets together, in mm²
 * @param conductor of a cable
 * @param sets of a cable that lie in parallel, else 1
 */
public record Size(String text, double amount, Optional<ConductorSize> conductor, int sets) {
    static Size amps(double amps) {
        return new Size(Decimals.toThousandths(amps) + " A", amps, Optional.empty(), 1);
    }

    static Size kiloamps(double amps) {
        return new Size(Decimals.toThousandths(amps / 1000) + " kA", amps, Optional.empty(), 1);
    }

    static Size kilovoltamperes(double kva) {
        return new Size(Decimals.toThousandths(kva) + " kVA", kva, Optional.empty(), 1);
    }

    static Size cable(ConductorSize conductor, int sets) {
        return new Size(
                (sets == 1 ? "" : sets + " × ") + conductor.name(),
                sets * conductor.squareMillimetres(),
                Optional.of(conductor),
                sets);
    }

    /** As it is stated; empty where the size has no table. */
    static Optional<Size> of(Cable cable) {
        return ConductorSize.of(cable.size()).map(conductor -> cable(conductor, cable.sets()));
    }

    /** Name of a cable's line conductor; empty for what is no cable. */
    public Optional<String> conductorName() {
        return conductor.map(ConductorSize::name);
    }

    /** The same cable of this size; its protective conductor stays as it is stated. */
    Cable laidAs(Cable laid) {
        return laid.withSize(conductor.orElseThrow().name()).withSets(sets);
    }
}
