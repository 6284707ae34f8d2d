package evenrise.solver;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The packages of both modules, each a room of the house, from the ground up: a room touches only rooms before it, and of
 * those the ones that its package-info names.
 */
final class Rooms {
    static final List<String> FROM_THE_GROUND_UP = List.of(
            "model.contract",
            "model.project",
            "model.plan",
            "model.intake",
            "model.portfolio",
            "model.readings",
            "model.estimate",
            "model.electrical",
            "model.electrical.breaker",
            "model.electrical.conductor",
            "model.electrical.motor",
            "model.electrical.source",
            "model.sequence",
            "model.rules",
            "model.review",
            "model.sizing",
            "model.event",
            "model.scatter",
            "model.observation",
            "model.measured",
            "model.answer",
            "model.handout",
            "model.evaluation",
            "model.check",
            "model.file",
            "solver.engine",
            "solver.engine.state",
            "solver.engine.start",
            "solver.engine.move",
            "solver.engine.fine",
            "solver.engine.search",
            "solver.engine.nearby",
            "solver.tidy",
            "solver.bounds",
            "solver.exhaustive",
            "solver.exact",
            "solver.sample",
            "solver.table",
            "solver.exchange",
            "solver.recording",
            "solver.intake",
            "solver.rework",
            "solver.commissioning",
            "solver.compare",
            "solver.grid",
            "solver.grid.ignite",
            "solver.portfolio",
            "solver.report",
            "solver.document",
            "solver.drawing",
            "solver.rendering",
            "solver.app",
            "solver.desk",
            "solver.cli");

    private static final String HOUSE = "evenrise.";
    private static final Pattern MAY_TOUCH = Pattern.compile("<p>May touch (.*)\\.$");
    private static final String NONE = "no other package of the house";

    /** The classes behind each arrow, as "A → B", by room and by the room it touches. */
    private final SortedMap<String, SortedMap<String, SortedSet<String>>> arrows = new TreeMap<>();

    Rooms(JavaClasses classes) {
        for (JavaClass each : classes) {
            SortedMap<String, SortedSet<String>> from = arrows.computeIfAbsent(room(each), room -> new TreeMap<>());
            for (Dependency dependency : each.getDirectDependenciesFromSelf()) {
                JavaClass target = dependency.getTargetClass().getBaseComponentType();
                if (target.getPackageName().startsWith(HOUSE) && !room(target).equals(room(each))) {
                    from.computeIfAbsent(room(target), room -> new TreeSet<>())
                            .add(each.getSimpleName() + " → " + target.getSimpleName());
                }
            }
        }
    }

    private static String room(JavaClass each) {
        return each.getPackageName().substring(HOUSE.length());
    }

    /** What is wrong with the house; empty where nothing is. */
    List<String> faults() {
        List<String> faults = new ArrayList<>();
        for (String room : arrows.keySet()) {
            if (!FROM_THE_GROUND_UP.contains(room)) {
                faults.add(room + " is not among the rooms; put it above all that it touches");
            }
        }
        for (String room : FROM_THE_GROUND_UP) {
            if (!arrows.containsKey(room)) {
                faults.add(room + " has no class");
                continue;
            }
            SortedSet<String> named = mayTouch(room);
            for (Map.Entry<String, SortedSet<String>> arrow : arrows.get(room).entrySet()) {
                String target = arrow.getKey();
                if (FROM_THE_GROUND_UP.indexOf(target) > FROM_THE_GROUND_UP.indexOf(room)) {
                    faults.add(room + " touches " + target + ", which is above it: " + arrow.getValue());
                } else if (!named.remove(target)) {
                    faults.add(room + " touches " + target + ", which its package-info does not name: "
                            + arrow.getValue() + ". Maybe move what it needs, or name it there");
                }
            }
            named.forEach(target ->
                    faults.add(room + " does not touch " + target + ". Maybe take it out of its package-info"));
        }
        return faults;
    }

    /** Rooms, arrows and the classes behind each arrow. */
    String drawn() {
        StringBuilder text = new StringBuilder();
        for (String room : FROM_THE_GROUND_UP) {
            text.append(room).append('\n');
            arrows.getOrDefault(room, new TreeMap<>())
                    .forEach((target, classes) -> text.append("  → ")
                            .append(target)
                            .append(": ")
                            .append(String.join(", ", classes))
                            .append('\n'));
        }
        return text.toString();
    }

    int arrowCount() {
        return arrows.values().stream().mapToInt(Map::size).sum();
    }

    /** A table for people: from the top down, what each room is for and what it touches. */
    static String map() {
        StringBuilder table = new StringBuilder("| package | for | touches |\n| --- | --- | --- |\n");
        for (int i = FROM_THE_GROUND_UP.size() - 1; i >= 0; i--) {
            String room = FROM_THE_GROUND_UP.get(i);
            String touched =
                    mayTouch(room).stream().map(name -> "`" + name + "`").collect(Collectors.joining(", "));
            table.append("| `%s` | %s | %s |\n".formatted(room, paragraphs(room).get(0), touched));
        }
        return table.toString();
    }

    /** The rooms that a package-info names as touched. */
    private static SortedSet<String> mayTouch(String room) {
        for (String paragraph : paragraphs(room)) {
            Matcher matcher = MAY_TOUCH.matcher(paragraph);
            if (matcher.matches()) {
                return matcher.group(1).equals(NONE)
                        ? new TreeSet<>()
                        : new TreeSet<>(Arrays.asList(matcher.group(1).split(", ")));
            }
        }
        throw new IllegalStateException("the package-info of " + room + " does not end in '<p>May touch …'");
    }

    /** Paragraphs of a package-info, each on one line. */
    private static List<String> paragraphs(String room) {
        Path file = Path.of("..", room.substring(0, room.indexOf('.')), "src/main/java/evenrise")
                .resolve(room.replace('.', '/'))
                .resolve("package-info.java");
        try {
            String text = Files.readString(file);
            String comment = text.substring(text.indexOf("/**") + 3, text.indexOf("*/"));
            return Arrays.stream(comment.split("\\R \\*\\R"))
                    .map(paragraph -> paragraph
                            .replaceAll("(?m)^ \\* ?", "")
                            .replaceAll("\\s+", " ")
                            .strip())
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException("Each package says what it is for and what it may touch", e);
        }
    }
}
