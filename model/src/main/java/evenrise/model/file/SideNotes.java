package evenrise.model.file;

import evenrise.model.contract.Phrase;
import evenrise.model.project.GivenFields;
import evenrise.model.project.Load;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What a file says beside its format: {@code $schema}, {@code notes} and {@code x-…} in any object, and fields of a newer
 * minor version. They stand apart from the record and are written with it again. An entry of a list is known by its id,
 * so that its notes follow it when others come or go. What loads leave unsaid goes along: it is left out again where it is
 * still so.
 */
public final class SideNotes {
    public static final SideNotes NONE = new SideNotes(Map.of(), Silence.NONE);

    /** Keys that any object may have, as JSON Schema and Java understand it alike. */
    static final String FREE_KEYS = "^(\\$schema|notes|x-.+)$";

    private static final Pattern FREE = Pattern.compile(FREE_KEYS);

    private final Map<String, Map<String, Node>> byPlace;

    private final Silence silence;

    private SideNotes(Map<String, Map<String, Node>> byPlace, Silence silence) {
        this.byPlace = byPlace;
        this.silence = silence;
    }

    /** Whether any object may have this key, whatever its value. */
    static boolean isFree(String key) {
        return FREE.matcher(key).find();
    }

    /** Everything in {@code root} that {@code type} does not know. */
    static SideNotes of(Node root, Class<?> type) {
        SideNotes notes = new SideNotes(new LinkedHashMap<>(), Silence.NONE);
        notes.take(root, type, "");
        return notes.isEmpty() ? NONE : notes;
    }

    SideNotes with(Silence unsaid) {
        return new SideNotes(byPlace, unsaid);
    }

    /** The same, and everything is said of every load. */
    public SideNotes inFull() {
        return with(Silence.NONE);
    }

    Silence silence() {
        return silence;
    }

    /** The same with notes of loads that have none yet, by their ids. */
    public SideNotes withLoadNotes(Map<String, String> added) {
        Map<String, Map<String, Node>> all = new LinkedHashMap<>(byPlace);
        added.forEach((load, text) -> {
            String place = entry(member("", "loads"), 0, Optional.of(load));
            Map<String, Node> notes = new LinkedHashMap<>(all.getOrDefault(place, Map.of()));
            notes.putIfAbsent("notes", new Node.Text(0, 0, text));
            all.put(place, notes);
        });
        return new SideNotes(all, silence);
    }

    public boolean isEmpty() {
        return byPlace.isEmpty();
    }

    /** Without fields that only a newer version knows, and with everything said: for another project. */
    public SideNotes free() {
        Map<String, Map<String, Node>> free = new LinkedHashMap<>();
        byPlace.forEach((place, notes) -> {
            Map<String, Node> kept = new LinkedHashMap<>(notes);
            kept.keySet().removeIf(key -> !isFree(key));
            if (!kept.isEmpty()) {
                free.put(place, kept);
            }
        });
        return new SideNotes(free, Silence.NONE);
    }

    /** Places whose notes {@code whole} has no room for, as {@code loads 'SUB-3'}. */
    public List<String> withoutPlaceIn(Record whole) {
        Set<String> there = new LinkedHashSet<>();
        places(whole, "", there);
        return byPlace.keySet().stream()
                .filter(place -> !there.contains(place))
                .map(SideNotes::shown)
                .toList();
    }

    /** Places that have notes, in the same words. */
    public List<String> places() {
        return byPlace.keySet().stream().map(SideNotes::shown).toList();
    }

    /** By key, in the order of the file. */
    Map<String, Node> at(String place) {
        return byPlace.getOrDefault(place, Map.of());
    }

    static String member(String place, String key) {
        return Pointers.child(place, key);
    }

    /** An entry by what names it, else by its number. */
    static String entry(String place, int index, Optional<String> name) {
        return Pointers.child(place, name.map(it -> Phrase.quoted(it)).orElse(Integer.toString(index)));
    }

    /** What names a record in its list. */
    static Optional<String> name(Object entry) {
        return entry instanceof Record record
                ? naming(RecordShape.of(record.getClass())).map(part -> (String) RecordShape.get(part, record))
                : Optional.empty();
    }

    private static Optional<RecordShape.Part> naming(RecordShape shape) {
        return List.of("id", "load").stream()
                .map(shape.parts()::get)
                .filter(part -> part != null && part.type() == String.class)
                .findFirst();
    }

    private void take(Node node, Type type, String place) {
        Type entryType = RecordShape.entryType(type);
        if (entryType != null && node instanceof Node.Arr list) {
            for (int i = 0; i < list.entries().size(); i++) {
                Node entry = list.entries().get(i);
                take(entry, entryType, entry(place, i, name(entry, entryType)));
            }
        } else if (shape(type).isPresent() && node instanceof Node.Obj object) {
            Map<String, RecordShape.Part> parts = shape(type).get().parts();
            object.members().forEach((key, member) -> {
                RecordShape.Part part = parts.get(key);
                if (part == null) {
                    byPlace.computeIfAbsent(place, any -> new LinkedHashMap<>()).put(key, member.value());
                } else {
                    take(member.value(), part.inner(), member(place, key));
                }
            });
        }
    }

    private static Optional<RecordShape> shape(Type type) {
        Type known = type == GivenFields.class ? Load.class : type;
        return known instanceof Class<?> record && record.isRecord()
                ? Optional.of(RecordShape.of(record))
                : Optional.empty();
    }

    private static Optional<String> name(Node entry, Type type) {
        return entry instanceof Node.Obj object && type instanceof Class<?> record && record.isRecord()
                ? naming(RecordShape.of(record))
                        .map(part -> object.members().get(part.key()))
                        .map(member -> member.value() instanceof Node.Text text ? text.text() : "")
                : Optional.empty();
    }

    private static void places(Object value, String place, Set<String> there) {
        if (value instanceof Optional<?> optional) {
            optional.ifPresent(inner -> places(inner, place, there));
        } else if (value instanceof List<?> list) {
            for (int i = 0; i < list.size(); i++) {
                places(list.get(i), entry(place, i, name(list.get(i))), there);
            }
        } else if (value instanceof GivenFields given) {
            places(given.byKey(), place, there);
        } else if (value instanceof Map<?, ?> members) {
            there.add(place);
            members.forEach((key, member) -> places(member, member(place, (String) key), there));
        } else if (value instanceof Record record) {
            there.add(place);
            RecordShape.of(record.getClass())
                    .parts()
                    .values()
                    .forEach(part -> places(RecordShape.get(part, record), member(place, part.key()), there));
        }
    }

    private static String shown(String place) {
        if (place.isEmpty()) {
            return "the file itself";
        }
        List<String> steps = new ArrayList<>();
        for (String at = place; !at.isEmpty(); at = Pointers.parent(at)) {
            steps.add(0, evenrise.model.check.Shown.plain(Pointers.last(at)));
        }
        return steps.stream().collect(Collectors.joining(" "));
    }
}
