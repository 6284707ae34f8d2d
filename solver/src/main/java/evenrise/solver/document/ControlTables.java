package evenrise.solver.document;

import evenrise.model.contract.Words;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.solver.report.BoardUse;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What is wired to and set on the boards, and the sequence that comes of it. */
final class ControlTables {
    private static final String LANDING =
            "A lead goes from each output to the breaker named beside it. “On” counts from the command to switch on, “off”"
                    + " from the command to switch off.";

    private static final String STEPS =
            "Envelope: the sum of the loads' envelopes at the supply right then, at nominal voltage, instantaneous.";

    private final Layout layout;

    ControlTables(Layout layout) {
        this.layout = layout;
    }

    DocumentTable<PlannedCircuit> landing() {
        List<PlannedCircuit> leads = layout.project().boards().stream()
                .flatMap(board -> layout.outputs(board.id()).values().stream())
                .map(each -> PlannedCircuit.of(layout, each))
                .toList();
        return DocumentTable.ofLoads(
                "landing",
                "Landing list: which control lead lands where",
                LANDING,
                List.of(
                        Column.text("board", "Board", each -> each.board().orElse("")),
                        Column.countOrNone("output", "Output", PlannedCircuit::output),
                        Column.text("load", "Load", PlannedCircuit::load),
                        Column.text("name", "Name", PlannedCircuit::name),
                        Column.text("panel", "Panel", PlannedCircuit::panel),
                        Column.text("slots", "Slots", PlannedCircuit::slots),
                        Column.number("on", "On", "s", PlannedCircuit::onSeconds, PlannedCircuit.ALWAYS_ON),
                        Column.number("off", "Off, from the off command", "s", PlannedCircuit::offSeconds, ""),
                        Column.text("breaker", "Breaker", PlannedCircuit::breaker),
                        Column.text(
                                "group", "Shutdown group", each -> each.group().orElse(""))),
                leads,
                PlannedCircuit::load);
    }

    DocumentTable<BoardUse> settings() {
        return DocumentTable.of(
                "settings",
                "Board settings",
                "",
                List.of(
                        Column.text("board", "Board", BoardUse::board),
                        Column.text("type", "Type", BoardUse::type),
                        Column.text("panel", "Panel", BoardUse::panel),
                        Column.text(
                                "after", "Starts after", each -> each.after().orElse("the command")),
                        Column.number("delay", "Start delay", "s", BoardUse::startDelaySeconds, ""),
                        Column.number("step", "Step", "s", BoardUse::stepSeconds, ""),
                        Column.count("used", "Outputs used", BoardUse::outputsUsed),
                        Column.count("outputs", "Outputs", BoardUse::outputs),
                        Column.text("unused", "Unused outputs", each -> runs(each.freeOutputs()))),
                BoardUse.of(layout));
    }

    /** In the order of switch-on. */
    DocumentTable<SwitchOn> sequence() {
        List<Column<SwitchOn>> columns = new ArrayList<>(List.of(
                Column.number("on", "On", "s", SwitchOn::onSeconds),
                Column.number("off", "Off", "s", each -> each.circuit().offSeconds(), ""),
                Column.text("load", "Load", each -> each.circuit().load()),
                Column.text("name", "Name", each -> each.circuit().name()),
                Column.text("role", "Role", each -> Words.word(each.circuit().role())),
                Column.text("panel", "Panel", each -> each.circuit().panel()),
                Column.text("slots", "Slots", each -> each.circuit().slots()),
                Column.text("phases", "Phases", each -> each.circuit().phases()),
                Column.text("board", "Board", each -> each.circuit().board().orElse("")),
                Column.countOrNone("output", "Output", each -> each.circuit().output())));
        List<Phase> phases = layout.project().supply().system().phases();
        for (int i = 0; i < phases.size(); i++) {
            int phase = i;
            columns.add(Column.number(
                    "envelope" + phases.get(i),
                    "Envelope on phase " + phases.get(i),
                    "A",
                    each -> each.envelopeAmps().get(phase)));
        }
        return DocumentTable.ofLoads(
                "steps",
                "Switch-ons in order",
                STEPS,
                columns,
                SwitchOn.of(layout),
                each -> each.circuit().load());
    }

    /** {@code 3, 9 to 16}. */
    private static String runs(List<Integer> numbers) {
        List<int[]> runs = new ArrayList<>();
        for (int number : numbers) {
            if (!runs.isEmpty() && runs.get(runs.size() - 1)[1] == number - 1) {
                runs.get(runs.size() - 1)[1] = number;
            } else {
                runs.add(new int[] {number, number});
            }
        }
        return runs.stream()
                .map(run -> run[0] == run[1] ? String.valueOf(run[0]) : run[0] + " to " + run[1])
                .collect(Collectors.joining(", "));
    }
}
