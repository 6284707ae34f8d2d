package evenrise.solver.desk;

import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.desk.MeasuredAnswers.SiteFileView;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Files from the site as windows hand them over. They stay in memory, and lie in a folder of their own, under harmless names,
 * only while they are read.
 */
final class SiteFiles {
    static final long MOST_BYTES = 64L << 20;
    private static final int MOST_FILES = 24;

    /** What a file is taken for. */
    private enum Kind {
        SHEET,
        RECORDING,
        /** Values of a recording whose other file says what they are. */
        PART
    }

    private record Held(Kind kind, byte[] bytes) {}

    /**
     * Where the files lie while they are read.
     *
     * @param recording the newest one
     */
    record Laid(Path folder, List<Path> sheets, Optional<Path> recording) {
        /** Messages name files as whoever handed them over does. */
        String bare(String message) {
            return message.replace(folder + folder.getFileSystem().getSeparator(), "");
        }
    }

    private final Jobs jobs;
    private final Map<String, Held> files = new LinkedHashMap<>();
    private final Map<String, ByteArrayOutputStream> begun = new LinkedHashMap<>();

    SiteFiles(Jobs jobs) {
        this.jobs = jobs;
    }

    /** @throws JobFailed where it is too large, or no file at all */
    void add(MeasuredRequests.Piece piece) {
        String name = AsideFolder.harmless(piece.name());
        byte[] bytes = decoded(piece.bytes());
        if (piece.first()) {
            begun.remove(name);
        }
        long others = Stream.concat(
                        files.entrySet().stream()
                                .filter(each -> !each.getKey().equals(name))
                                .map(each -> (long) each.getValue().bytes().length),
                        begun.values().stream().map(each -> (long) each.size()))
                .mapToLong(each -> each)
                .sum();
        if (others + bytes.length > MOST_BYTES) {
            begun.clear();
            throw refused("more than " + (MOST_BYTES >> 20)
                    + " MiB are not held here. Cut the minutes about the start out of the recording, or read it with"
                    + " 'evenrise commission --recording', however long it is.");
        }
        if (!files.containsKey(name) && files.size() + begun.size() >= MOST_FILES) {
            throw refused("more than " + MOST_FILES + " files are not held here. Take some away first.");
        }
        ByteArrayOutputStream all = begun.computeIfAbsent(name, any -> new ByteArrayOutputStream());
        all.writeBytes(bytes);
        if (piece.last()) {
            begun.remove(name);
            keep(name, all.toByteArray());
        }
    }

    private void keep(String name, byte[] bytes) {
        Kind kind = kind(name, bytes);
        if (kind == Kind.RECORDING) {
            // One start at a time: the newest.
            files.values().removeIf(each -> each.kind() == Kind.RECORDING);
        }
        files.remove(name);
        files.put(name, new Held(kind, bytes));
    }

    private Kind kind(String name, byte[] bytes) {
        if (name.endsWith(".cfg")) {
            return Kind.RECORDING;
        }
        if (name.endsWith(".dat")) {
            return Kind.PART;
        }
        boolean isSheet = AsideFolder.during(folder -> {
            Path file = folder.resolve(name);
            AsideFolder.write(file, bytes);
            return jobs.isFilledSheet(file);
        });
        return isSheet ? Kind.SHEET : Kind.RECORDING;
    }

    void remove(String name) {
        files.remove(name);
    }

    void clear() {
        files.clear();
        begun.clear();
    }

    boolean isEmpty() {
        return files.isEmpty();
    }

    List<SiteFileView> views() {
        return files.entrySet().stream()
                .map(each -> new SiteFileView(
                        each.getKey(),
                        switch (each.getValue().kind()) {
                            case SHEET -> "sheet";
                            case RECORDING -> "recording";
                            case PART -> "part of a recording";
                        },
                        each.getValue().bytes().length))
                .toList();
    }

    /** Lets something read the files, which are gone afterwards. */
    <T> T read(Function<Laid, T> reader) {
        return AsideFolder.during(folder -> {
            List<Path> sheets = new ArrayList<>();
            Optional<Path> recording = Optional.empty();
            for (Map.Entry<String, Held> each : files.entrySet()) {
                Path file = folder.resolve(each.getKey());
                AsideFolder.write(file, each.getValue().bytes());
                if (each.getValue().kind() == Kind.SHEET) {
                    sheets.add(file);
                } else if (each.getValue().kind() == Kind.RECORDING) {
                    recording = Optional.of(file);
                }
            }
            Laid laid = new Laid(folder, sheets, recording);
            try {
                return reader.apply(laid);
            } catch (JobFailed e) {
                throw new JobFailed(
                        e.reason(), e.messages().stream().map(laid::bare).toList());
            }
        });
    }

    private static byte[] decoded(String base64) {
        try {
            return Base64.getDecoder().decode(base64);
        } catch (IllegalArgumentException e) {
            throw refused("what was sent is no Base64.");
        }
    }

    private static JobFailed refused(String why) {
        return new JobFailed(JobFailed.Reason.REQUEST, why);
    }
}
