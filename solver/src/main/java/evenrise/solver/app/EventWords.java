package evenrise.solver.app;

import evenrise.model.check.ScriptChecks;
import evenrise.model.contract.Words;
import evenrise.model.event.EventScript;
import evenrise.model.event.Happening;
import evenrise.model.event.ScriptEvent;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
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
            event(word, wrong).ifPresent(events::add);
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

    private static Optional<ScriptEvent> event(String word, List<String> wrong) {
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
            return Optional.of(event(at, kind.get(), number, which));
        } catch (IllegalArgumentException e) {
            wrong.add("--event '" + word + "': " + e.getMessage() + ".");
            return Optional.empty();
        }
    }

    private static ScriptEvent event(OptionalDouble at, Happening kind, OptionalDouble number, Optional<String> which) {
        boolean ofGroup = kind == Happening.GROUP_ON || kind == Happening.GROUP_OFF;
        boolean ofBoard = kind == Happening.BOARD_DEAD || kind == Happening.BOARD_BACK;
        boolean isMains = kind == Happening.MAINS;
        boolean isLate = kind == Happening.LATE || kind == Happening.EARLY;
        if (number.isPresent() && !isMains && !isLate) {
            throw new IllegalArgumentException("this word takes no number");
        }
        return new ScriptEvent(
                at,
                kind,
                which.filter(any -> ofGroup),
                which.filter(any -> ofBoard),
                which.filter(any -> !ofGroup && !ofBoard && !isMains),
                isMains ? number : OptionalDouble.empty(),
                isMains ? phases(which) : List.of(),
                isLate ? number : OptionalDouble.empty());
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
                .orElseThrow(() -> new IllegalArgumentException("'" + text + "' is no phase, expected A, B or C"));
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
