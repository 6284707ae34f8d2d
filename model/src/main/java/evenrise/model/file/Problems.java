package evenrise.model.file;

import evenrise.model.check.Objection;
import evenrise.model.check.Severity;
import evenrise.model.check.Shown;
import evenrise.model.contract.Phrase;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Collects the problems of one file and gives each its place and its subject in words. */
final class Problems {
    /** More than this are only counted: whoever has so many has one cause for most. */
    static final int MOST = 200;

    private static final int MOST_TAKERS = 3;

    /** After so many errors the rest of the file is not looked at: it would take long and say nothing new. */
    static final int ENOUGH = 5_000;

    /** Ends the reading of a file that is wrong almost everywhere. */
    static final class Enough extends RuntimeException {
        private static final long serialVersionUID = 1;

        private Enough() {
            super(null, null, false, false);
        }
    }

    private static final Map<String, String> ONE_OF = Map.of(
            "panels", "panel",
            "board_types", "board type",
            "boards", "board",
            "shutdown_groups", "shutdown group",
            "loads", "load",
            "defaults", "default",
            "assignments", "assignment of load",
            "violations", "violation");

    private final String whole;
    private final List<DraftProblem> drafts = new ArrayList<>();
    private final Set<String> errors = new HashSet<>();
    private final Set<String> unbound = new HashSet<>();
    private final Map<String, DraftProblem> ofDefaults = new HashMap<>();
    private int left;
    private Optional<TreePlaces> places = Optional.empty();

    /** @param whole what the root is called: {@code the project} */
    Problems(String whole) {
        this.whole = whole;
    }

    /**
     * From here on, places can be looked up by their pointers.
     *
     * @param placesOfDefaults where values of the tree stand that came to loads from defaults
     */
    void in(Node tree, Map<Node, String> placesOfDefaults) {
        places = Optional.of(new TreePlaces(tree, placesOfDefaults));
    }

    void error(String pointer, Node at, String value, String expected, String cure) {
        error(pointer, at.line(), at.column(), value, expected, cure);
    }

    void error(String pointer, int line, int column, String value, String expected, String cure) {
        errors.add(pointer);
        add(Severity.ERROR, pointer, line, column, value, expected, cure);
    }

    /** What keeps nobody from reading on. */
    void remark(String pointer, int line, int column, String value, String expected, String cure) {
        add(Severity.REMARK, pointer, line, column, value, expected, cure);
    }

    /** As {@link #error}; and what the record got in place of the value says nothing. */
    void unbound(String pointer, Node at, String value, String expected, String cure) {
        unbound.add(pointer);
        error(pointer, at, value, expected, cure);
    }

    /** What a check finds under the pointer is not to be reported. */
    void distrust(String pointer) {
        unbound.add(pointer);
    }

    boolean isUnbound(String pointer) {
        return unbound.contains(pointer);
    }

    /** Adds what a check found, unless it is about a value that could not be bound. */
    void add(Objection finding) {
        for (String at = finding.pointer(); !at.isEmpty(); at = Pointers.parent(at)) {
            if (unbound.contains(at)) {
                return;
            }
        }
        Node place = places.orElseThrow().nearest(finding.pointer());
        if (finding.severity() == Severity.ERROR) {
            errors.add(finding.pointer());
        }
        add(
                finding.severity(),
                finding.pointer(),
                place.line(),
                place.column(),
                finding.value(),
                finding.expected(),
                finding.cure());
    }

    private void add(
            Severity severity, String pointer, int line, int column, String value, String expected, String cure) {
        String origin = places.map(it -> it.origin(pointer)).orElse(pointer);
        DraftProblem draft =
                new DraftProblem(severity, origin, line, column, value, expected, cure, new LinkedHashSet<>());
        if (origin.startsWith("/defaults/")) {
            DraftProblem first = ofDefaults.putIfAbsent(draft.cause(), draft);
            if (!origin.equals(pointer)) {
                (first == null ? draft : first).takers().add(subject(pointer.replaceFirst("^(/loads/\\d+).*", "$1")));
            }
            if (first != null) {
                return;
            }
        }
        if (drafts.size() < MOST) {
            drafts.add(draft);
        } else {
            left++;
        }
        if (drafts.size() + left >= ENOUGH) {
            throw new Enough();
        }
    }

    /** Pointers of all errors so far. */
    Set<String> errors() {
        return Set.copyOf(errors);
    }

    /** Pointers of what could not be bound, so that a stand-in took its place. */
    Set<String> unread() {
        return Set.copyOf(unbound);
    }

    /** By line and column. */
    List<Problem> sorted() {
        List<Problem> problems = new ArrayList<>();
        for (DraftProblem it : drafts) {
            String taken = it.takers().isEmpty() ? "" : " (taken by " + Phrase.listed(it.takers(), MOST_TAKERS) + ")";
            problems.add(new Problem(
                    it.severity(),
                    it.pointer(),
                    it.line(),
                    it.column(),
                    subject(it.pointer()),
                    it.value() + taken,
                    it.expected(),
                    it.cure()));
        }
        problems.sort(Comparator.comparingInt(Problem::line).thenComparingInt(Problem::column));
        if (left > 0) {
            String rest = drafts.size() + left >= ENOUGH ? ", and the rest was not looked at" : "";
            String more = "wrong in " + left + " more places than are listed" + rest;
            problems.add(new Problem(
                    errors.isEmpty() ? Severity.REMARK : Severity.ERROR,
                    "",
                    0,
                    0,
                    whole,
                    more,
                    "none",
                    "Maybe cure the first ones first."));
        }
        return problems;
    }

    /** {@code poles of load 'SUB-3'}, {@code comes_after[0] of load 'SUB-3'}, {@code rated_a of supply}. */
    private String subject(String pointer) {
        String part = "";
        for (String at = pointer; !at.isEmpty(); at = Pointers.parent(at)) {
            String parent = Pointers.parent(at);
            String last = Pointers.last(at);
            boolean entry = isIndexOfAList(parent, last);
            String kind = entry && Pointers.parent(parent).isEmpty() ? ONE_OF.get(Pointers.last(parent)) : null;
            if (kind != null) {
                return part.isEmpty() ? owner(at, kind, last) : part + " of " + owner(at, kind, last);
            }
            String shown = Shown.plain(last);
            if (entry) {
                part = "[" + shown + "]" + (part.isEmpty() ? "" : "." + part);
            } else {
                part = part.isEmpty() || part.startsWith("[") ? shown + part : shown + "." + part;
            }
        }
        return part.isEmpty() ? whole : part;
    }

    private boolean isIndexOfAList(String parent, String last) {
        return node(parent).filter(Node.Arr.class::isInstance).isPresent() && !last.isEmpty();
    }

    private String owner(String pointer, String kind, String index) {
        for (String key : List.of("id", "load", "rule")) {
            Optional<Node> id = node(pointer + "/" + key);
            if (id.isPresent() && id.get() instanceof Node.Text text) {
                return kind + " " + Shown.quoted(text.text());
            }
        }
        return kind + " number " + (Integer.parseInt(index) + 1);
    }

    private Optional<Node> node(String pointer) {
        return places.flatMap(it -> it.node(pointer));
    }
}
