package evenrise.solver.document;

import evenrise.model.project.Project;
import evenrise.model.project.Resume;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Tables with a row for each breaker, along the panels. */
final class CircuitTables {
    private static final SheetWords WORDS = SheetWords.in(SheetLanguage.EN);

    private final Project project;
    private final String leftOut;
    private final List<PlannedCircuit> circuits;
    private final String commissioning;

    CircuitTables(Layout layout, List<PlannedCircuit> circuits) {
        this.project = layout.project();
        this.leftOut = PlannedCircuit.leftOut(layout);
        this.circuits = circuits;
        this.commissioning = WORDS.say("test.note") + (project.hasClocks() ? " " + WORDS.say("test.systems") : "");
    }

    DocumentTable<PlannedCircuit> circuits() {
        List<Column<PlannedCircuit>> columns = new ArrayList<>(List.of(
                Column.text("panel", "Panel", PlannedCircuit::panel),
                Column.text("slots", "Slots", PlannedCircuit::slots),
                Column.text("phases", "Phases", PlannedCircuit::phases),
                Column.text("load", "Load", PlannedCircuit::load),
                Column.text("name", "Name", PlannedCircuit::name),
                Column.count("poles", "Poles", PlannedCircuit::poles),
                Column.number("breaker", "Breaker", "A", PlannedCircuit::breakerAmps),
                Column.number("running", "Running", "A", PlannedCircuit::runningAmps),
                Column.text("group", "Shutdown group", each -> each.group().orElse("")),
                new Column<>("on", "On", "s", true, PlannedCircuit::on)));
        columns.addAll(further(circuits));
        return table("circuits", "Circuits: every breaker, panel by panel", leftOut, columns);
    }

    /** What only some plants have. */
    static List<Column<PlannedCircuit>> further(List<PlannedCircuit> circuits) {
        List<Column<PlannedCircuit>> columns = new ArrayList<>();
        if (circuits.stream().anyMatch(each -> each.system().isPresent())) {
            columns.add(Column.text("system", "System", each -> each.system().orElse("")));
        }
        if (circuits.stream().anyMatch(each -> !each.contactor().isEmpty())) {
            columns.add(Column.text("contactor", "Contactor", PlannedCircuit::contactor));
        }
        if (circuits.stream().anyMatch(each -> each.rack().isPresent())) {
            columns.add(Column.text("rack", "Rack", each -> each.rack().orElse("")));
        }
        if (circuits.stream().anyMatch(each -> each.offAfterSeconds() > 0)) {
            columns.add(Column.number("offAfter", "Off later than the mirror", "s", PlannedCircuit::offAfterSeconds));
        }
        return columns;
    }

    /** With blanks for what is found on site; what is measured is to be near what was planned. */
    DocumentTable<PlannedCircuit> commissioning() {
        return table(
                "commissioning",
                "Commissioning sheet",
                commissioning,
                List.of(
                        Column.text("panel", "Panel", PlannedCircuit::panel),
                        Column.text("slots", "Slots", PlannedCircuit::slots),
                        Column.text("phases", "Phases", PlannedCircuit::phases),
                        Column.text("load", "Load", PlannedCircuit::load),
                        Column.text("name", "Name", PlannedCircuit::name),
                        Column.text("control", "Control", CircuitTables::control),
                        Column.number("idle", "Planned idle", "A", PlannedCircuit::idleAmps),
                        Column.number("running", "Planned running", "A", PlannedCircuit::runningAmps),
                        Column.blank("idleMeasured", "Idle measured, A"),
                        Column.blank("measured", "Running measured, A"),
                        new Column<>("on", "On planned", "s", true, PlannedCircuit::on),
                        Column.blank("onMeasured", "On measured, s"),
                        Column.number("off", "Off planned", "s", PlannedCircuit::offSeconds, ""),
                        Column.blank("offMeasured", "Off measured, s"),
                        Column.blank("result", "Pass or fail"),
                        Column.blank("initials", "Initials")));
    }

    /** The same to be filled in by a machine or in a workbook: a row a pole, with when and by which meter. */
    DocumentTable<MeasuredPole> poles() {
        return DocumentTable.ofLoads(
                        "commissioning",
                        "Commissioning sheet",
                        commissioning + " A row is a pole; times, pass or fail go on a load's first.",
                        List.of(
                                Column.text(
                                        "panel", "Panel", each -> each.circuit().panel()),
                                Column.text(
                                        "slots", "Slots", each -> each.circuit().slots()),
                                Column.text("phase", "Phase", MeasuredPole::phase),
                                Column.text("load", "Load", MeasuredPole::load),
                                Column.text(
                                        "name", "Name", each -> each.circuit().name()),
                                Column.text("control", "Control", each -> control(each.circuit())),
                                Column.number(
                                        "idle",
                                        "Planned idle",
                                        "A",
                                        each -> each.circuit().idleAmps()),
                                Column.number(
                                        "running",
                                        "Planned running",
                                        "A",
                                        each -> each.circuit().runningAmps()),
                                Column.blank("idleMeasured", "Idle measured, A"),
                                Column.blank("measured", "Running measured, A"),
                                Column.blank("peakMeasured", "Peak measured, A"),
                                new Column<>(
                                        "on",
                                        "On planned",
                                        "s",
                                        true,
                                        each -> each.circuit().on()),
                                Column.blank("onMeasured", "On measured, s"),
                                Column.number(
                                        "off",
                                        "Off planned",
                                        "s",
                                        each -> each.circuit().offSeconds(),
                                        ""),
                                Column.blank("offMeasured", "Off measured, s"),
                                Column.blank("result", "Pass or fail"),
                                Column.blank("date", "Date"),
                                Column.blank("meter", "Meter"),
                                Column.blank("remark", "Remark"),
                                Column.blank("initials", "Initials")),
                        circuits.stream()
                                .flatMap(each -> MeasuredPole.of(each).stream())
                                .toList(),
                        MeasuredPole::load)
                .with(List.of(Column.count(
                        "slot", "First slot", each -> each.circuit().slot())));
    }

    private static String control(PlannedCircuit circuit) {
        return circuit.control() + (circuit.turns() ? "; check rotation before coupling" : "");
    }

    /** What is to be seen of every motor before use; empty where there is none. */
    Optional<DocumentTable<PlannedCircuit>> motors() {
        List<PlannedCircuit> motors =
                circuits.stream().filter(PlannedCircuit::isMotor).toList();
        return motors.isEmpty()
                ? Optional.empty()
                : Optional.of(DocumentTable.ofLoads(
                        "motors",
                        WORDS.say("motors.title"),
                        motorsNote(project, WORDS),
                        List.of(
                                Column.text("load", "Load", PlannedCircuit::load),
                                Column.text("name", "Name", PlannedCircuit::name),
                                Column.text("place", "Place", PlannedCircuit::place),
                                Column.text("control", "Control", PlannedCircuit::control),
                                Column.blank("offAfterMains", "Off after mains"),
                                Column.blank("offAfterRelease", "Off after release"),
                                Column.blank("startsWhenAsked", "Starts when asked"),
                                Column.blank("initials", "Initials")),
                        motors,
                        PlannedCircuit::load));
    }

    static String motorsNote(Project project, SheetWords words) {
        return words.say("motors.note") + " "
                + words.say(project.behaviourOrDefault()
                        .motorsResume()
                        .map(each -> each == Resume.STAY_OFF ? "motors.stay-off" : "motors.come-back")
                        .orElse("motors.not-stated"));
    }

    DocumentTable<PlannedCircuit> labels() {
        return table(
                "labels",
                "Labels for the breakers",
                "",
                List.of(
                        Column.text("place", "Place", PlannedCircuit::place),
                        Column.text("load", "Load", PlannedCircuit::load),
                        Column.text("name", "Name", PlannedCircuit::name),
                        Column.text("breaker", "Breaker", each -> each.breaker() + ", phase " + each.phases()),
                        Column.text("control", "Control", PlannedCircuit::control)));
    }

    private DocumentTable<PlannedCircuit> table(
            String id, String title, String note, List<Column<PlannedCircuit>> columns) {
        return DocumentTable.ofLoads(id, title, note, columns, circuits, PlannedCircuit::load)
                .with(List.of(firstSlot()));
    }

    /** For who sorts: further slots stand as a text. */
    static Column<PlannedCircuit> firstSlot() {
        return Column.count("slot", "First slot", PlannedCircuit::slot);
    }
}
