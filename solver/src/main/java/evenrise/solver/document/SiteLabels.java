package evenrise.solver.document;

import evenrise.model.project.OnEmergency;
import evenrise.model.rules.NodeFigures;
import evenrise.solver.document.SiteLabel.Line;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** What the labels of a plan say, from the rows that its other sheets have. */
public final class SiteLabels {
    private final Document document;
    private final SheetWords words;
    private final Map<String, String> effects = new HashMap<>();
    private final Map<String, String> conductors = new HashMap<>();

    public SiteLabels(Document document, SheetWords words) {
        this.document = document;
        this.words = words;
        document.tables()
                .emergency()
                .rows()
                .forEach(each -> effects.put(each.circuit().load(), effect(each)));
        document.schedules().stream()
                .flatMap(schedule -> schedule.rows().stream())
                .flatMap(row -> Stream.of(row.left(), row.right()))
                .filter(slot -> slot.isFirst() && !slot.wire().isEmpty())
                .forEach(slot -> conductors.put(slot.load(), slot.wire()));
    }

    /** In the order in which somebody walks along the panels, or along the boards. */
    public List<SiteLabel> of(LabelKind kind) {
        return switch (kind) {
            case BREAKER ->
                document.tables().labels().rows().stream().map(this::breaker).toList();
            case CABLE ->
                Stream.concat(
                                document.tables().equipment().rows().stream()
                                        .filter(each -> !each.fedFrom().isEmpty())
                                        .flatMap(this::feeder),
                                document.tables().labels().rows().stream().flatMap(this::cable))
                        .toList();
            case LEAD ->
                document.tables().landing().rows().stream().flatMap(this::lead).toList();
            case EQUIPMENT ->
                document.tables().equipment().rows().stream()
                        .map(this::equipment)
                        .toList();
        };
    }

    private String effect(EmergencyEffect each) {
        if (!each.circuit().isSwitched()) {
            return words.say("label.always-on");
        }
        if (each.circuit().isWithoutOutput()) {
            return words.say("label.no-output");
        }
        return words.say(each.effect().equals(EmergencyEffect.word(OnEmergency.DROP)) ? "label.drops" : "label.holds");
    }

    private SiteLabel breaker(PlannedCircuit each) {
        List<Line> lines = new ArrayList<>(List.of(
                Line.strong(each.place()), Line.strong(each.load()), Line.needed(rating(each) + control(each))));
        lines.add(Line.needed(effects.get(each.load())));
        name(each, lines);
        return new SiteLabel(lines, anchor("load", each.load()));
    }

    /** One for the panel's end, one for the load's. */
    private Stream<SiteLabel> cable(PlannedCircuit each) {
        return Stream.of(each.place(), each.load()).map(end -> {
            List<Line> lines = new ArrayList<>(List.of(
                    Line.strong(each.load()),
                    Line.needed(words.say(
                            "label.from-to", words.say("label.panel-slots", each.panel(), each.slots()), each.load())),
                    Line.needed(rating(each)
                            + (conductors.containsKey(each.load())
                                    ? ", " + words.number(conductors.get(each.load()))
                                    : "")),
                    Line.needed(effects.get(each.load())),
                    Line.needed(words.say("label.this-end", end))));
            name(each, lines);
            return new SiteLabel(lines, anchor("load", each.load()));
        });
    }

    private Stream<SiteLabel> feeder(EquipmentLabel each) {
        return Stream.of(place(each.fedFrom()), each.place()).map(end -> {
            List<Line> lines = new ArrayList<>(List.of(
                    Line.strong(words.say("label.feeder", each.place())),
                    Line.needed(words.say("label.from-to", place(each.fedFrom()), each.place()))));
            each.cable().ifPresent(cable -> lines.add(Line.needed(CableWords.whole(cable, words))));
            lines.add(Line.needed(words.say("label.this-end", end)));
            return new SiteLabel(lines, anchor("at", each.place()));
        });
    }

    /** One for the board's end, one for that of the breaker or contactor. */
    private Stream<SiteLabel> lead(PlannedCircuit each) {
        String output = output(each);
        return Stream.of(output, each.place()).map(end -> {
            List<Line> lines = new ArrayList<>(List.of(
                    Line.strong(output),
                    Line.needed(words.say(
                            each.byContactor() ? "label.to-contactor" : "label.to-breaker",
                            each.panel(),
                            each.slots())),
                    Line.needed(words.say("label.switches", each.load())),
                    Line.needed(effects.get(each.load())),
                    Line.needed(words.say("label.this-end", end))));
            name(each, lines);
            return new SiteLabel(lines, anchor("load", each.load()));
        });
    }

    /** Nothing of it may be cut: it warns. */
    private SiteLabel equipment(EquipmentLabel each) {
        List<Line> lines = new ArrayList<>(List.of(
                Line.strong(words.say("plate.warning")),
                Line.strong(
                        each.fedFrom().isEmpty()
                                ? place(each.place())
                                : words.say("plate.fed-from", each.place(), place(each.fedFrom()))),
                Line.needed(words.say("plate.fault", fault(each)))));
        if (each.isOver()) {
            lines.add(Line.strong(words.say("plate.over")));
        }
        lines.add(Line.needed(words.voltage(each.voltage())));
        if (each.fault().isPresent()) {
            lines.add(Line.needed(words.say(
                    "plate.calculated",
                    document.imprint().date(),
                    document.imprint().revision())));
        }
        lines.add(Line.needed(words.say("plate.not-calculated")));
        lines.add(Line.needed(words.say("plate.dead")));
        return new SiteLabel(lines, anchor("at", each.place()));
    }

    /** The supply has no name of its own. */
    private String place(String id) {
        return id.equals(NodeFigures.SUPPLY) ? words.say("place.supply") : id;
    }

    private String fault(EquipmentLabel each) {
        return each.fault().isPresent()
                ? words.say("plate.without-motors", words.number(each.faultInWords()))
                : words.say("plate.unknown");
    }

    private static void name(PlannedCircuit each, List<Line> lines) {
        if (!each.name().equals(each.load()) && !each.name().isBlank()) {
            lines.add(Line.beside(each.name()));
        }
    }

    private String rating(PlannedCircuit each) {
        return words.say("label.rating", words.number(each.breaker()), each.phases());
    }

    private String control(PlannedCircuit each) {
        if (each.isWithoutOutput() || each.onSeconds().isEmpty()) {
            return "";
        }
        return ", "
                + each.comesWith().map(lead -> words.say("label.with", lead)).orElseGet(() -> output(each));
    }

    private String output(PlannedCircuit each) {
        return words.say(
                "label.output",
                each.board().orElse(""),
                String.valueOf(each.output().orElse(0)));
    }

    private static String anchor(String what, String id) {
        return what + "=" + URLEncoder.encode(id, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
