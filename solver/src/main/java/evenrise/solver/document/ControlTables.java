package evenrise.solver.document;

import evenrise.model.project.Board;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import evenrise.solver.document.Grid.Column;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** What is wired to and set on the boards, and the sequence that comes of it. */
final class ControlTables {
    private final Layout layout;

    ControlTables(Layout layout) {
        this.layout = layout;
    }

    Grid landing() {
        List<List<Object>> rows = new ArrayList<>();
        for (Board board : layout.project().boards()) {
            layout.outputs(board.id())
                    .forEach((output, each) -> rows.add(List.of(
                            board.id(),
                            output,
                            each.id(),
                            each.load().name(),
                            each.assignment().panel(),
                            Places.slots(each),
                            Places.on(each),
                            Places.off(layout, each),
                            breaker(each),
                            each.load().shutdownGroup().orElse(""))));
        }
        return new Grid(
                "landing",
                "Landing list: which control lead lands where",
                "A lead goes from each output to the breaker named beside it. “On” counts from the command to switch"
                        + " on, “off” from the command to switch off.",
                List.of(
                        Column.text("Board"),
                        Column.number("Output", ""),
                        Column.text("Load"),
                        Column.text("Name"),
                        Column.text("Panel"),
                        Column.text("Slots"),
                        Column.number("On", "s"),
                        Column.number("Off, from the off command", "s"),
                        Column.text("Breaker"),
                        Column.text("Shutdown group")),
                rows);
    }

    Grid settings() {
        List<List<Object>> rows = new ArrayList<>();
        for (Board board : layout.project().boards()) {
            int outputs = layout.index().typeOf(board).outputs();
            rows.add(List.of(
                    board.id(),
                    board.type(),
                    board.panel(),
                    board.after().orElse("the command"),
                    layout.setting(board).delaySeconds(),
                    layout.setting(board).betweenSeconds(),
                    layout.outputs(board.id()).size(),
                    outputs,
                    unused(layout.outputs(board.id()).keySet(), outputs)));
        }
        return new Grid(
                "settings",
                "Board settings",
                List.of(
                        Column.text("Board"),
                        Column.text("Type"),
                        Column.text("Panel"),
                        Column.text("Starts after"),
                        Column.number("Start delay", "s"),
                        Column.number("Step", "s"),
                        Column.number("Outputs used", ""),
                        Column.number("Outputs", ""),
                        Column.text("Unused outputs")),
                rows);
    }

    /** In the order of switch-on, with the supply's envelopes at nominal voltage on each phase right then. */
    Grid sequence() {
        List<Phase> phases = layout.project().supply().system().phases();
        List<Column> columns = new ArrayList<>(List.of(
                Column.number("On", "s"),
                Column.number("Off", "s"),
                Column.text("Load"),
                Column.text("Name"),
                Column.text("Role"),
                Column.text("Panel"),
                Column.text("Slots"),
                Column.text("Phases"),
                Column.text("Board"),
                Column.number("Output", "")));
        phases.forEach(phase -> columns.add(Column.number("Envelope on phase " + phase, "A")));
        List<Placement> inOrder = layout.placements().stream()
                .filter(Placement::isSequenced)
                .sorted(Comparator.comparingDouble(
                                (Placement each) -> each.onSeconds().getAsDouble())
                        .thenComparing(Places::board)
                        .thenComparing(each -> each.assignment().output().getAsInt()))
                .toList();
        double tolerance = layout.project().timingToleranceSeconds();
        double[] instants = inOrder.stream()
                .mapToDouble(each -> each.onSeconds().getAsDouble() - tolerance)
                .toArray();
        List<Placement> fed =
                layout.placements().stream().filter(Placement::fits).toList();
        List<double[]> amps = phases.stream()
                .map(phase -> EnvelopeSum.amps(fed, phase, tolerance, instants))
                .toList();
        List<List<Object>> rows = new ArrayList<>();
        for (int i = 0; i < inOrder.size(); i++) {
            Placement each = inOrder.get(i);
            List<Object> row = new ArrayList<>(List.of(
                    Places.on(each),
                    Places.off(layout, each),
                    each.id(),
                    each.load().name(),
                    each.load().role().name().toLowerCase(Locale.ROOT),
                    each.assignment().panel(),
                    Places.slots(each),
                    Places.phases(each),
                    Places.board(each),
                    Places.output(each)));
            for (double[] phase : amps) {
                row.add(phase[i]);
            }
            rows.add(row);
        }
        return new Grid(
                "steps",
                "Switch-ons in order",
                "Envelope: the sum of the loads' envelopes at the supply right then, at nominal voltage,"
                        + " instantaneous.",
                columns,
                rows);
    }

    private static String breaker(Placement each) {
        return Figures.breaker(each.load().poles(), each.load().breakerAmps());
    }

    /** Runs of numbers from 1 to {@code outputs} that are free: {@code 3, 9 to 16}. */
    private static String unused(Set<Integer> used, int outputs) {
        List<Integer> free = IntStream.rangeClosed(1, outputs)
                .filter(output -> !used.contains(output))
                .boxed()
                .toList();
        List<int[]> runs = new ArrayList<>();
        for (int output : free) {
            if (!runs.isEmpty() && runs.get(runs.size() - 1)[1] == output - 1) {
                runs.get(runs.size() - 1)[1] = output;
            } else {
                runs.add(new int[] {output, output});
            }
        }
        return runs.stream()
                .map(run -> run[0] == run[1] ? String.valueOf(run[0]) : run[0] + " to " + run[1])
                .collect(Collectors.joining(", "));
    }
}
