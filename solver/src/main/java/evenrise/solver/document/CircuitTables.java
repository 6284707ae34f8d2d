package evenrise.solver.document;

import evenrise.model.project.Resume;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import evenrise.model.rules.Rotation;
import evenrise.solver.document.Grid.Column;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Tables with a row for each breaker, along the panels. */
final class CircuitTables {
    private final Layout layout;

    CircuitTables(Layout layout) {
        this.layout = layout;
    }

    Grid circuits() {
        return new Grid(
                "circuits",
                "Circuits: every breaker, panel by panel",
                List.of(
                        Column.text("Panel"),
                        Column.text("Slots"),
                        Column.text("Phases"),
                        Column.text("Load"),
                        Column.text("Name"),
                        Column.number("Poles", ""),
                        Column.number("Breaker", "A"),
                        Column.number("Running", "A"),
                        Column.text("Shutdown group"),
                        Column.number("On", "s")),
                rows(each -> List.of(
                        each.assignment().panel(),
                        Places.slots(each),
                        Places.phases(each),
                        each.id(),
                        each.load().name(),
                        each.load().poles(),
                        each.load().breakerAmps(),
                        each.load().runningAmps(),
                        each.load().shutdownGroup().orElse(""),
                        Places.on(each))));
    }

    /** With blanks for what is found on site; what is measured is to be near what was planned. */
    Grid commissioning() {
        return new Grid(
                "commissioning",
                "Commissioning sheet",
                "Planned currents are rms, on each pole. A load that idles, as an amplifier without a signal, draws"
                        + " its idle current; times count from the command to switch on.",
                List.of(
                        Column.text("Panel"),
                        Column.text("Slots"),
                        Column.text("Phases"),
                        Column.text("Load"),
                        Column.text("Name"),
                        Column.text("Control"),
                        Column.number("Planned idle", "A"),
                        Column.number("Planned running", "A"),
                        Column.text("Measured, A"),
                        Column.number("On planned", "s"),
                        Column.text("On measured, s"),
                        Column.text("Initials")),
                rows(each -> List.of(
                        each.assignment().panel(),
                        Places.slots(each),
                        Places.phases(each),
                        each.id(),
                        each.load().name(),
                        control(each) + (Rotation.matters(each.load()) ? "; check rotation before coupling" : ""),
                        each.load().idleAmps(),
                        each.load().runningAmps(),
                        "",
                        Places.on(each),
                        "",
                        "")));
    }

    /** What is to be seen of every motor before use; empty where there is none. */
    Optional<Grid> motors() {
        List<List<Object>> rows = Places.inOrder(layout).stream()
                .filter(each -> each.load().isMotor())
                .map(each -> List.<Object>of(
                        each.id(),
                        each.load().name(),
                        each.assignment().panel() + " " + Places.slots(each),
                        control(each),
                        "",
                        "",
                        "",
                        ""))
                .toList();
        return rows.isEmpty()
                ? Optional.empty()
                : Optional.of(new Grid(
                        "motors",
                        "Motors: none may come back unasked",
                        "To be tested of each motor before use, people clear and the load secured: running, cut the"
                                + " mains for longer than the control rides through, and bring them back; running, close"
                                + " the emergency contact and release it. It stays off both times until somebody asks for"
                                + " it (IEC 60204-1 7.5 and 9.2.3.4.2). "
                                + stated(),
                        List.of(
                                Column.text("Load"),
                                Column.text("Name"),
                                Column.text("Place"),
                                Column.text("Control"),
                                Column.text("Off after mains"),
                                Column.text("Off after release"),
                                Column.text("Starts when asked"),
                                Column.text("Initials")),
                        rows));
    }

    private String stated() {
        return layout.project()
                .behaviourOrDefault()
                .motorsResume()
                .map(each -> each == Resume.STAY_OFF
                        ? "The project states that its control keeps them off."
                        : "The project states that its control lets them come back: that is to be changed.")
                .orElse("What the control does is not stated: peaks after mains or release count both ways.");
    }

    Grid labels() {
        return new Grid(
                "labels",
                "Labels for the breakers",
                List.of(
                        Column.text("Place"),
                        Column.text("Load"),
                        Column.text("Name"),
                        Column.text("Breaker"),
                        Column.text("Control")),
                rows(each -> List.of(
                        each.assignment().panel() + " " + Places.slots(each),
                        each.id(),
                        each.load().name(),
                        Figures.amps(each.load().breakerAmps()) + ", phase " + Places.phases(each),
                        control(each))));
    }

    private static String control(Placement each) {
        return each.isSequenced() ? Places.board(each) + " output " + Places.output(each) : Places.ALWAYS_ON;
    }

    private List<List<Object>> rows(Function<Placement, List<Object>> row) {
        return Places.inOrder(layout).stream().map(row).toList();
    }
}
