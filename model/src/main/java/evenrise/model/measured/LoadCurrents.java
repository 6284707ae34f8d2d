package evenrise.model.measured;

import evenrise.model.contract.Figures;
import evenrise.model.measured.Discrepancy.Weight;
import evenrise.model.project.Load;
import evenrise.model.project.MeasuredValue;
import evenrise.model.project.Phase;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Currents of loads, pole by pole, beside what the project states or what was measured of them before. */
final class LoadCurrents {
    private final List<Discrepancy> found = new ArrayList<>();

    /** @param placements of the plan */
    static List<Discrepancy> of(Iterable<Placement> placements, SiteReadings readings) {
        LoadCurrents it = new LoadCurrents();
        for (Placement each : placements) {
            it.look(each, readings.of(each.id()));
        }
        return it.found;
    }

    private void look(Placement placement, List<PoleReading> readings) {
        Load load = placement.load();
        for (PoleReading each : readings) {
            each.phase()
                    .filter(phase ->
                            !placement.phases().isEmpty() && !placement.phases().contains(phase) && each.hasCurrent())
                    .ifPresent(phase -> elsewhere(placement, each, phase));
            each.idleAmps().ifPresent(amps -> idle(load, each, amps, readings));
            each.runningAmps().ifPresent(amps -> running(load, each, amps));
            each.peakAmps().ifPresent(amps -> peak(load, each, amps));
        }
    }

    private void elsewhere(Placement placement, PoleReading reading, Phase phase) {
        add(
                Weight.FAULT,
                reading,
                MeasuredQuantity.PHASE,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                0,
                "read on phase " + phase + ", planned on " + letters(placement.phases()),
                "its slot, and the wires between breaker and load");
    }

    private static String letters(List<Phase> phases) {
        return String.join("", phases.stream().map(Phase::name).toList());
    }

    private void idle(Load load, PoleReading reading, double amps, List<PoleReading> readings) {
        Expectation expected = Expectation.idle(load);
        double tolerance = expected.spreadAmps() + reading.visit().meter().errorAmps(amps);
        overRange(reading, amps, MeasuredQuantity.IDLE);
        if (Math.abs(amps - expected.amps()) <= tolerance) {
            return;
        }
        LikelyCause cause = LikelyCause.ofIdle(load, expected, amps, readings, reading);
        boolean isLess = amps < expected.amps() && !cause.isFault() && !expected.isDrift();
        add(
                cause.isFault() ? Weight.FAULT : isLess ? Weight.LESS : Weight.DIFFERS,
                reading,
                MeasuredQuantity.IDLE,
                OptionalDouble.of(expected.amps()),
                OptionalDouble.of(amps),
                tolerance,
                cause.words(),
                cause.lookAt());
    }

    private void running(Load load, PoleReading reading, double amps) {
        double error = reading.visit().meter().errorAmps(amps);
        overRange(reading, amps, MeasuredQuantity.RUNNING);
        if (amps + error > load.breakerAmps()) {
            add(
                    Weight.UNSAFE,
                    reading,
                    MeasuredQuantity.RUNNING,
                    OptionalDouble.of(load.breakerAmps()),
                    OptionalDouble.of(amps),
                    error,
                    amps > load.breakerAmps()
                            ? "more than its breaker is rated for"
                            : "within what the meter may be off by, its breaker's rating is passed",
                    "what is on the circuit; take something off before it is used again");
            return;
        }
        Expectation expected = Expectation.running(load);
        if (amps > expected.amps() + (expected.isDrift() ? expected.spreadAmps() : 0) + error) {
            add(
                    Weight.DIFFERS,
                    reading,
                    MeasuredQuantity.RUNNING,
                    OptionalDouble.of(expected.amps()),
                    OptionalDouble.of(amps),
                    error,
                    expected.isDrift()
                            ? "it draws more than on " + since(expected)
                            : LikelyCause.plate(load, MeasuredValue.RUNNING),
                    "the gear's plate, and what else is on its circuit");
        } else if (amps < expected.amps() - error) {
            add(
                    Weight.LESS,
                    reading,
                    MeasuredQuantity.RUNNING,
                    OptionalDouble.of(expected.amps()),
                    OptionalDouble.of(amps),
                    error,
                    "not in full use, or its plate states more than it draws",
                    "whether it was in full use; if so, confirm it");
        }
    }

    private void peak(Load load, PoleReading reading, double amps) {
        double error = reading.visit().meter().errorAmps(amps);
        if (amps > load.inrushAmps() + error) {
            add(
                    Weight.DIFFERS,
                    reading,
                    MeasuredQuantity.PEAK,
                    OptionalDouble.of(load.inrushAmps()),
                    OptionalDouble.of(amps),
                    error,
                    LikelyCause.plate(load, MeasuredValue.PEAK),
                    "whether the meter holds the peak of the wave and not its rms value; then the gear's data");
        }
    }

    private void overRange(PoleReading reading, double amps, MeasuredQuantity quantity) {
        Meter meter = reading.visit().meter();
        if (meter.isOverRange(amps)) {
            add(
                    Weight.DIFFERS,
                    reading,
                    quantity,
                    meter.rangeAmps(),
                    OptionalDouble.of(amps),
                    0,
                    "beyond the range of meter " + meter.name() + ", "
                            + Figures.THOUSANDTHS.amps(meter.rangeAmps().orElseThrow()),
                    "the meter's range; read again");
        }
    }

    static String since(Expectation expected) {
        return expected.since().flatMap(MeasuredValue::date).orElse("an earlier visit");
    }

    private void add(
            Weight weight,
            PoleReading reading,
            MeasuredQuantity quantity,
            OptionalDouble planned,
            OptionalDouble measured,
            double tolerance,
            String cause,
            String lookAt) {
        found.add(new Discrepancy(
                weight,
                reading.load(),
                Optional.of(reading.phase()).flatMap(phase -> phase),
                quantity,
                planned,
                measured,
                tolerance,
                cause,
                lookAt,
                reading.visit()));
    }
}
