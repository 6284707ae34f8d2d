package evenrise.solver.app;

import evenrise.model.check.ScriptChecks;
import evenrise.model.contract.Words;
import evenrise.model.event.EventScript;
import evenrise.model.event.Happening;
import evenrise.model.event.ScriptEvent;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.NodeFigures;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Reads happenings as they are written on a command line: {@code [SECONDS:]WORD[=NUMBER][@WHICH]}. */
final class EventWords {
    private static final Pattern FORM =
            Pattern.compile("(?:([0-9]+(?:\\.[0-9]+)?):)?([a-z-]+)(?:=([0-9]+(?:\\.[0-9]+)?))?(?:@(.+))?");

    private EventWords() {}

    /**
     * A script of these happenings.
     *
     * @throws JobFailed that lists everything wrong
     */
    static EventScript script(String name, List<String> words, Project project) {
        List<String> wrong = new ArrayList<>();
        List<ScriptEvent> events = new ArrayList<>();
        for (String word : words) {
            event(word, project, wrong).ifPresent(events::add);
        }
        if (!wrong.isEmpty()) {
            throw new JobFailed(JobFailed.Reason.REQUEST, wrong);
        }
        EventScript script = new EventScript(name, events);
        List<String> findings = ScriptChecks.errors(script, project).stream()
                .map(finding -> "--event '" + words.get(index(finding.pointer())) + "': "
                        + finding.pointer().replaceAll(".*/", "") + " is " + finding.value() + ", expected "
                        + finding.expected() + (finding.cure().isEmpty() ? "." : ". " + finding.cure()))
                .toList();
        if (!findings.isEmpty()) {
            throw new JobFailed(JobFailed.Reason.REQUEST, findings);
        }
        return script;
    }

    private static int index(String pointer) {
        return Integer.parseInt(pointer.split("/")[2]);
    }

    private static Optional<ScriptEvent> event(String word, Project project, List<String> wrong) {
        Matcher form = FORM.matcher(word);
        Optional<Happening> kind = form.matches() ? happening(form.group(2)) : Optional.empty();
        if (kind.isEmpty()) {
            wrong.add("--event '" + word + "' is not understood, expected [SECONDS:]WORD[=NUMBER][@WHICH] with one of: "
                    + Arrays.stream(Happening.values()).map(Words::word).collect(Collectors.joining(", ")) + ".");
            return Optional.empty();
        }
        OptionalDouble at = number(form.group(1));
        OptionalDouble number = number(form.group(3));
        Optional<String> which = Optional.ofNullable(form.group(4));
        try {
            return Optional.of(event(at, kind.get(), number, which, Points.of(project)));
        } catch (IllegalArgumentException e) {
            wrong.add("--event '" + word + "': " + e.getMessage() + ".");
            return Optional.empty();
        }
    }

    /** Names of the supply, of panels and of nodes. */
    private record Points(Set<String> ids) {
        static Points of(Project project) {
            Set<String> ids = new HashSet<>(Set.of(NodeFigures.SUPPLY));
            project.panels().forEach(each -> ids.add(each.id()));
            project.nodes().forEach(each -> ids.add(each.id()));
            return new Points(ids);
        }
    }

    private static ScriptEvent event(
            OptionalDouble at, Happening kind, OptionalDouble number, Optional<String> which, Points points) {
        boolean isMains = kind == Happening.MAINS;
        boolean isLate = kind == Happening.LATE || kind == Happening.EARLY;
        if (number.isPresent() && !isMains && !isLate) {
            throw new IllegalArgumentException("this word takes no number");
        }
        ScriptEvent event = ScriptEvent.of(at, kind);
        if (isMains && number.isPresent()) {
            event = mains(event, number.getAsDouble(), which, points);
        } else if (isLate && which.isPresent() && number.isPresent()) {
            return event.late(which.get(), number.getAsDouble());
        }
        if (which.isEmpty() || isMains) {
            return event;
        }
        return switch (kind) {
            case GROUP_ON, GROUP_OFF -> event.withGroup(which.get());
            case BOARD_DEAD, BOARD_BACK -> event.withBoard(which.get());
            case SYSTEM_ON, SYSTEM_OFF, EMERGENCY, RELEASE -> event.withSystem(which.get());
            case TRANSFER, TRANSFER_BACK, NEUTRAL_LOST -> event.atNode(which.get());
            case TRIP, RESET ->
                points.ids().contains(which.get()) ? event.atNode(which.get()) : event.withLoad(which.get());
            default -> event.withLoad(which.get());
        };
    }

    /** Of phases, of a panel or node, or of phases of one: NODE/A,B. */
    private static ScriptEvent mains(ScriptEvent event, double percent, Optional<String> which, Points points) {
        if (which.isEmpty()) {
            return event.voltage(percent, List.of());
        }
        if (points.ids().contains(which.get())) {
            return event.voltage(percent, List.of()).atNode(which.get());
        }
        int slash = which.get().lastIndexOf('/');
        if (slash > 0 && points.ids().contains(which.get().substring(0, slash))) {
            return event.voltage(percent, phases(Optional.of(which.get().substring(slash + 1))))
                    .atNode(which.get().substring(0, slash));
        }
        return event.voltage(percent, phases(which));
    }

    private static List<Phase> phases(Optional<String> which) {
        return which.map(text ->
                        Arrays.stream(text.split(",")).map(EventWords::phase).toList())
                .orElse(List.of());
    }

    private static Phase phase(String text) {
        return Arrays.stream(Phase.values())
                .filter(each -> each.name().equals(text))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(
                        "'" + text + "' is no phase, panel or node, expected A, B, C or a name"));
    }

    /** On a command line, on and off alone are those of the system; in YAML they would be truth values. */
    private static Optional<Happening> happening(String word) {
        if (word.equals("on") || word.equals("off")) {
            return happening("system-" + word);
        }
        return Arrays.stream(Happening.values())
                .filter(each -> Words.word(each).equals(word))
                .findFirst();
    }

    private static OptionalDouble number(String text) {
        return text == null ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text));
    }
}
