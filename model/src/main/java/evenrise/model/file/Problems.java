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

    /** @param takers loads that the value came to from a default */
    private record Draft(
            Severity severity,
            String pointer,
            int line,
            int column,
            String value,
            String expected,
            String cure,
            Set<String> takers) {
        /** What the same value is wrong by, whichever load it came to. */
        String cause() {
            return pointer + '\n' + value + '\n' + expected;
        }
    }

    private final String whole;
    private final List<Draft> drafts = new ArrayList<>();
    private final Set<String> errors = new HashSet<>();
    private final Set<String> unbound = new HashSet<>();
    private final Map<String, Optional<Node>> found = new HashMap<>();
    private final Map<String, Draft> ofDefaults = new HashMap<>();
    private Map<Node, String> origins = Map.of();
    private int left;
    private Node root;

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
        root = tree;
        origins = placesOfDefaults;
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
        Node place = root;
        for (String at = finding.pointer(); !at.isEmpty(); at = Pointers.parent(at)) {
            Optional<Node> node = node(at);
            if (node.isPresent()) {
                place = node.get();
                break;
            }
        }
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
        String origin = origin(pointer);
        Draft draft = new Draft(severity, origin, line, column, value, expected, cure, new LinkedHashSet<>());
        if (origin.startsWith("/defaults/")) {
            Draft first = ofDefaults.putIfAbsent(draft.cause(), draft);
            if (!origin.equals(pointer)) {
                (first == null ? draft : first).takers.add(subject(pointer.replaceFirst("^(/loads/\\d+).*", "$1")));
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

    /** Where what stands under the pointer was written: in the defaults, where a load took it from there. */
    private String origin(String pointer) {
        if (origins.isEmpty() || node(pointer).isEmpty()) {
            return pointer;
        }
        for (String at = pointer; !at.isEmpty(); at = Pointers.parent(at)) {
            String origin = origins.get(node(at).orElseThrow());
            if (origin != null) {
                return origin + pointer.substring(at.length());
            }
        }
        return pointer;
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
        for (Draft it : drafts) {
            String taken = it.takers.isEmpty() ? "" : " (taken by " + Phrase.listed(it.takers, MOST_TAKERS) + ")";
            problems.add(new Problem(
                    it.severity,
                    it.pointer,
                    it.line,
                    it.column,
                    subject(it.pointer),
                    it.value + taken,
                    it.expected,
                    it.cure));
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
        return root != null && node(parent).filter(Node.Arr.class::isInstance).isPresent() && !last.isEmpty();
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
        if (root == null) {
            return Optional.empty();
        }
        if (pointer.isEmpty()) {
            return Optional.of(root);
        }
        Optional<Node> known = found.get(pointer);
        if (known == null) {
            known = node(Pointers.parent(pointer)).flatMap(parent -> child(parent, Pointers.last(pointer)));
            found.put(pointer, known);
        }
        return known;
    }

    private static Optional<Node> child(Node parent, String key) {
        if (parent instanceof Node.Obj object) {
            return Optional.ofNullable(object.members().get(key)).map(Node.Member::value);
        }
        if (parent instanceof Node.Arr array && key.matches("[0-9]{1,9}")) {
            int index = Integer.parseInt(key);
            return index < array.entries().size() ? Optional.of(array.entries().get(index)) : Optional.empty();
        }
        return Optional.empty();
    }
}
