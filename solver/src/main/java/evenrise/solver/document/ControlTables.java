package evenrise.solver.document;

import evenrise.model.contract.Words;
import evenrise.model.project.Board;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.solver.report.BoardUse;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What is wired to and set on the boards, and the sequence that comes of it. */
final class ControlTables {
    private static final String LANDING =
            "A lead goes from each output to the breaker named beside it. “On” counts from the start signal, “off”"
                    + " from the stop signal.";

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
        List<Column<PlannedCircuit>> columns = new ArrayList<>(List.of(
                Column.text("board", "Board", each -> each.board().orElse("")),
                Column.countOrNone("output", "Output", PlannedCircuit::output),
                Column.text("load", "Load", PlannedCircuit::load),
                Column.text("name", "Name", PlannedCircuit::name),
                Column.text("panel", "Panel", PlannedCircuit::panel),
                Column.text("slots", "Slots", PlannedCircuit::slots),
                new Column<>("on", "On", "s", true, PlannedCircuit::on),
                Column.number("off", "Off, from the stop signal", "s", PlannedCircuit::offSeconds, ""),
                Column.number("breaker", "Breaker", "A", PlannedCircuit::breakerAmps),
                Column.count("poles", "Poles", PlannedCircuit::poles),
                Column.text("group", "Shutdown group", each -> each.group().orElse(""))));
        columns.addAll(CircuitTables.further(leads));
        if (leads.stream().anyMatch(each -> each.setSeconds().isPresent())) {
            columns.add(Column.number("set", "Set this output to", "s", PlannedCircuit::setSeconds, ""));
        }
        return DocumentTable.ofLoads(
                        "landing",
                        "Landing list: which control lead lands where",
                        LANDING + notes(leads),
                        columns,
                        leads,
                        PlannedCircuit::load)
                .with(List.of(CircuitTables.firstSlot()));
    }

    private String notes(List<PlannedCircuit> leads) {
        List<String> notes = new ArrayList<>();
        if (layout.project().hasClocks()) {
            notes.add(" Both are those of the system that the load belongs to.");
        }
        if (leads.stream().anyMatch(PlannedCircuit::byContactor)) {
            notes.add(" A contactor's lead goes to its coil; what is behind it comes on and goes off with it.");
        }
        if (leads.stream().anyMatch(each -> each.setSeconds().isPresent())) {
            notes.add(" An output with a time of its own counts it from where its board starts.");
        }
        return String.join("", notes);
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
                                "after", "Starts after", each -> each.after().orElse("the start signal")),
                        Column.number("delay", "Start delay", "s", BoardUse::startDelaySeconds, BoardUse.EACH_OUTPUT),
                        Column.number("step", "Step", "s", BoardUse::stepSeconds, BoardUse.EACH_OUTPUT),
                        Column.text("chain", "Chain", each -> chain(each.board())),
                        Column.text("use", "In use", this::use),
                        Column.count("used", "Outputs used", BoardUse::outputsUsed),
                        Column.count("outputs", "Outputs", BoardUse::outputs),
                        Column.text("unused", "Unused outputs", each -> runs(each.freeOutputs()))),
                BoardUse.of(layout));
    }

    /** From the command to the board. */
    private String chain(String board) {
        List<String> boards = new ArrayList<>();
        for (Optional<String> at = Optional.of(board); at.isPresent() && !boards.contains(at.get()); ) {
            boards.add(0, at.get());
            at = layout.index().board(at.get()).flatMap(Board::after);
        }
        return "start signal → " + String.join(" → ", boards);
    }

    /** A board without a load may still be needed: for the boards that start after it. */
    private String use(BoardUse use) {
        if (use.outputsUsed() > 0) {
            return "yes";
        }
        String next = layout.project().boards().stream()
                .filter(board -> board.after().filter(use.board()::equals).isPresent())
                .map(Board::id)
                .collect(Collectors.joining(", "));
        return next.isEmpty()
                ? "no: no load hangs on it"
                : "no load hangs on it, but " + next + " starts after it: power it and set it";
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
                Column.text("board", "Board", each -> each.circuit().switchedWith()),
                Column.countOrNone("output", "Output", each -> each.circuit().output())));
        if (!layout.project().systems().isEmpty()) {
            columns.add(
                    0,
                    Column.text(
                            "system", "System", each -> each.circuit().system().orElse("")));
        }
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
                        STEPS
                                + (layout.project().hasClocks()
                                        ? " System by system, each by its own clock: what is always on counts, and every other"
                                                + " system at its worst."
                                        : ""),
                        columns,
                        SwitchOn.of(layout),
                        each -> each.circuit().load())
                .with(List.of(Column.count(
                        "slot", "First slot", each -> each.circuit().slot())));
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
