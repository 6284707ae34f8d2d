package evenrise.solver.document;

import evenrise.model.contract.Words;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * What was built, for who keeps the building: flat tables of types, components, spaces and systems, with columns as the
 * sheets of COBie 2.4 have them (NIBS, from memory). What a project does not state is {@code n/a}, as there.
 */
public final class Handover {
    private static final String NOT_STATED = "n/a";

    private static final String NOTE =
            "Columns as the sheets of COBie 2.4 have them (from memory); n/a: the project does not state it. External"
                    + " identifiers stay as long as ids of the project do.";

    /**
     * One thing in the building.
     *
     * @param identifier kind and id, which stay
     */
    private record Component(
            String name, String type, String space, String description, String kind, String identifier) {}

    /** A component of a system. */
    private record Member(String system, String category, Component component) {}

    private final Layout layout;
    private final List<Component> components = new ArrayList<>();
    private final List<Member> members = new ArrayList<>();

    private Handover(Layout layout) {
        this.layout = layout;
        layout.project().panels().forEach(this::panel);
        layout.project().boards().forEach(this::board);
        PlannedCircuit.along(layout).forEach(this::circuit);
    }

    /** Types, components, spaces, systems. */
    public static List<DocumentTable<?>> of(Layout layout) {
        Handover handover = new Handover(layout);
        return List.of(handover.types(), handover.all(), handover.spaces(), handover.systems());
    }

    private void panel(Panel panel) {
        components.add(new Component(
                "Panel " + panel.id(),
                "Panel, " + panel.slots() + " slots",
                panel.location().orElse(NOT_STATED),
                "Panel: breakers in numbered slots",
                "panel",
                "panel/" + panel.id()));
    }

    private void board(Board board) {
        components.add(new Component(
                "Board " + board.id(),
                "Board " + board.type(),
                space(board.panel()),
                "Board: switches breakers one after another",
                "board",
                "board/" + board.id()));
    }

    private void circuit(PlannedCircuit circuit) {
        Component breaker = new Component(
                "Breaker " + circuit.panel() + " " + circuit.slots(),
                "Breaker " + Unrounded.rated(circuit.breakerAmps()) + " A, " + circuit.poles() + "-pole",
                space(circuit.panel()),
                "Feeds " + circuit.load(),
                "breaker",
                "breaker/" + circuit.load());
        Component load = new Component(
                "Load " + circuit.load(),
                "Load, " + Words.word(circuit.role()),
                circuit.rack().map(rack -> "Rack " + rack).orElse(NOT_STATED),
                circuit.name(),
                "load",
                "load/" + circuit.load());
        components.add(breaker);
        components.add(load);
        Stream.of(breaker, load)
                .forEach(each -> members.add(new Member("Panel " + circuit.panel(), "Power distribution", each)));
        circuit.board().ifPresent(board -> members.add(new Member("Board " + board, "Sequenced switching", breaker)));
        circuit.group().ifPresent(group -> members.add(new Member("Group " + group, "Emergency shutdown", load)));
        layout.index()
                .load(circuit.load())
                .flatMap(Load::system)
                .ifPresent(system -> members.add(new Member("System " + system, "Switched system", load)));
    }

    private String space(String panel) {
        return layout.index().panel(panel).flatMap(Panel::location).orElse(NOT_STATED);
    }

    private DocumentTable<Component> types() {
        Map<String, Component> first = new LinkedHashMap<>();
        components.forEach(each -> first.putIfAbsent(each.type(), each));
        return DocumentTable.of(
                "handover-types",
                "Hand-over: types",
                NOTE,
                List.of(
                        Column.text("name", "Name", Component::type),
                        Column.text("category", "Category", Component::kind),
                        Column.text("assetType", "AssetType", any -> "Fixed"),
                        stated("manufacturer", "Manufacturer"),
                        stated("modelNumber", "ModelNumber")),
                List.copyOf(first.values()));
    }

    private DocumentTable<Component> all() {
        return DocumentTable.of(
                "handover-components",
                "Hand-over: components",
                NOTE,
                List.of(
                        Column.text("name", "Name", Component::name),
                        Column.text("typeName", "TypeName", Component::type),
                        Column.text("space", "Space", Component::space),
                        Column.text("description", "Description", Component::description),
                        Column.text("extSystem", "ExtSystem", any -> "evenrise"),
                        Column.text("extObject", "ExtObject", Component::kind),
                        Column.text("extIdentifier", "ExtIdentifier", Component::identifier),
                        stated("serialNumber", "SerialNumber"),
                        stated("installationDate", "InstallationDate"),
                        Column.text("tagNumber", "TagNumber", Component::name)),
                components);
    }

    private DocumentTable<String> spaces() {
        return DocumentTable.of(
                "handover-spaces",
                "Hand-over: spaces",
                NOTE,
                List.of(
                        Column.text("name", "Name", Function.identity()),
                        stated("category", "Category"),
                        stated("floorName", "FloorName"),
                        stated("description", "Description")),
                components.stream()
                        .map(Component::space)
                        .filter(space -> !space.equals(NOT_STATED))
                        .distinct()
                        .toList());
    }

    private DocumentTable<Member> systems() {
        return DocumentTable.of(
                "handover-systems",
                "Hand-over: systems",
                NOTE,
                List.of(
                        Column.text("name", "Name", Member::system),
                        Column.text("category", "Category", Member::category),
                        Column.text(
                                "componentNames",
                                "ComponentNames",
                                each -> each.component().name()),
                        Column.text("extSystem", "ExtSystem", any -> "evenrise")),
                members);
    }

    private static <R> Column<R> stated(String key, String heading) {
        return Column.text(key, heading, any -> NOT_STATED);
    }
}
