package evenrise.model.measured;

import evenrise.model.contract.Figures;
import evenrise.model.measured.Discrepancy.Weight;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** When loads came on and went off, beside the plan. */
final class LoadTimes {
    /** Of fewer loads that a board is early or late by the same, each may be by itself. */
    private static final int FEWEST_OF_A_BOARD = 3;

    private final Layout layout;
    private final double toleranceSeconds;
    private final List<Discrepancy> found = new ArrayList<>();
    private final Map<String, PoleReading> on = new LinkedHashMap<>();

    private LoadTimes(Layout layout, SiteReadings readings) {
        this.layout = layout;
        this.toleranceSeconds = layout.project().timingToleranceSeconds();
        readings.poles().stream()
                .filter(each -> each.onSeconds().isPresent())
                .forEach(each -> on.put(each.load(), each));
    }

    static List<Discrepancy> of(Layout layout, SiteReadings readings) {
        LoadTimes it = new LoadTimes(layout, readings);
        for (PoleReading each : readings.poles()) {
            layout.placement(each.load()).ifPresent(placement -> it.look(placement, each));
        }
        return it.found;
    }

    private void look(Placement placement, PoleReading reading) {
        double tolerance = toleranceSeconds + reading.visit().meter().seconds();
        if (reading.onSeconds().isPresent() && placement.isSequenced()) {
            double planned = placement.onSeconds().orElseThrow();
            double read = reading.onSeconds().getAsDouble();
            if (Math.abs(read - planned) > tolerance) {
                add(reading, MeasuredQuantity.ON, planned, read, tolerance, late(placement, planned, read, tolerance));
            }
        }
        if (reading.offSeconds().isPresent() && placement.isSequenced()) {
            double planned = layout.clocks()
                    .offSeconds(placement.load(), placement.onSeconds().orElseThrow());
            double read = reading.offSeconds().getAsDouble();
            if (Math.abs(read - planned) > tolerance) {
                String[] cause = {"it goes off at another time", "its output, and how the board steps off"};
                add(reading, MeasuredQuantity.OFF, planned, read, tolerance, cause);
            }
        }
        if (reading.onSeconds().isPresent() && !placement.load().switched()) {
            String[] cause = {"it is planned to be always on, and comes on with the sequence", "its slot and its output"
            };
            found.add(new Discrepancy(
                    Weight.FAULT,
                    reading.load(),
                    Optional.empty(),
                    MeasuredQuantity.ON,
                    OptionalDouble.empty(),
                    reading.onSeconds(),
                    tolerance,
                    cause[0],
                    cause[1],
                    reading.visit()));
        }
    }

    /** Cause, and what to look at. */
    private String[] late(Placement placement, double planned, double read, double tolerance) {
        Optional<String> other = on.values().stream()
                .filter(each -> !each.load().equals(placement.id()))
                .filter(each -> isAt(each.load(), read, tolerance)
                        && Math.abs(each.onSeconds().orElseThrow() - planned) <= tolerance)
                .map(PoleReading::load)
                .findFirst();
        if (other.isPresent()) {
            return new String[] {"it and " + other.get() + " come on at each other's time", "the control leads of both"
            };
        }
        if (placement.board().isPresent()) {
            String board = placement.board().get().id();
            List<Double> apart = layout.outputs(board).values().stream()
                    .filter(each -> on.containsKey(each.id()) && each.isSequenced())
                    .map(each -> on.get(each.id()).onSeconds().orElseThrow()
                            - each.onSeconds().orElseThrow())
                    .toList();
            double shift = read - planned;
            if (apart.size() >= FEWEST_OF_A_BOARD
                    && apart.stream().allMatch(each -> Math.abs(each - shift) <= tolerance)) {
                return new String[] {
                    "all of board " + board + " is " + Figures.HUNDREDTHS.seconds(Math.abs(shift))
                            + (shift > 0 ? " late" : " early"),
                    "its start delay, and the board that it starts after"
                };
            }
            boolean grows = apart.size() >= FEWEST_OF_A_BOARD
                    && Math.abs(apart.get(apart.size() - 1) - apart.get(0)) > 2 * tolerance
                    && isMonotone(apart);
            if (grows) {
                return new String[] {"board " + board + " steps faster or slower than planned", "its step setting"};
            }
        }
        return new String[] {"it comes on at another time", "its output, and the board's setting"};
    }

    private static boolean isMonotone(List<Double> values) {
        boolean isRising = values.get(values.size() - 1) > values.get(0);
        for (int i = 1; i < values.size(); i++) {
            if (isRising ? values.get(i) < values.get(i - 1) - 0.1 : values.get(i) > values.get(i - 1) + 0.1) {
                return false;
            }
        }
        return true;
    }

    private boolean isAt(String load, double seconds, double tolerance) {
        return layout.placement(load)
                .filter(Placement::isSequenced)
                .filter(each -> Math.abs(each.onSeconds().orElseThrow() - seconds) <= tolerance)
                .isPresent();
    }

    private void add(
            PoleReading reading,
            MeasuredQuantity quantity,
            double planned,
            double read,
            double tolerance,
            String[] cause) {
        found.add(new Discrepancy(
                Weight.FAULT,
                reading.load(),
                Optional.empty(),
                quantity,
                OptionalDouble.of(planned),
                OptionalDouble.of(read),
                tolerance,
                cause[0],
                cause[1],
                reading.visit()));
    }
}
