package evenrise.solver.app;

import evenrise.model.evaluation.Evaluation;
import evenrise.solver.document.Document;
import evenrise.solver.rendering.DxfPicture;
import evenrise.solver.rendering.PrintedPage;
import evenrise.solver.rendering.PrintedSheets;
import evenrise.solver.rendering.SheetPictures;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Documents of a plan as they are going to be written, to be looked at before. Holds files and pictures in memory until it is
 * closed.
 *
 * @since 0.1.0
 */
public final class DrawnDocuments implements AutoCloseable {
    private static final String PDF = ".pdf";
    private static final String DXF = ".dxf";

    private final Evaluation evaluation;
    private final DocumentFolder folder;
    private final Document document;
    private final Map<String, byte[]> files;
    private final Map<String, List<PrintedPage>> pages;
    private final Map<String, String> sections = new LinkedHashMap<>();
    private final Map<String, SheetPictures> pictures = new LinkedHashMap<>();

    DrawnDocuments(Evaluation evaluation, DocumentFolder folder, DocumentFiles.DrawnFiles drawn) {
        this.evaluation = evaluation;
        this.folder = folder;
        this.document = drawn.document();
        this.files = new LinkedHashMap<>(drawn.files());
        this.pages = drawn.pages();
    }

    /**
     * A printed page.
     *
     * @param sheet its number as a sheet; empty where it has none
     * @param shape its width by its height
     */
    public record Page(String sheet, String title, double shape) {}

    /**
     * What is to be handed out anew against the earlier plan.
     *
     * @param part of the sheet; empty where it is one
     */
    public record Changed(String sheet, String part, int rows) {}

    public Evaluation evaluation() {
        return evaluation;
    }

    /** Whether it is for a country whose paper is US Letter. */
    public boolean isOnLetter() {
        return document.isOnLetter();
    }

    /** Titles of all sections that there is something for, by their words, whether they were chosen or not. */
    public synchronized Map<String, String> sections() {
        if (sections.isEmpty()) {
            sections.putAll(PrintedSheets.titles(document));
        }
        return Collections.unmodifiableMap(sections);
    }

    /** Names of all files, in the order in which they are told. */
    public List<String> names() {
        return List.copyOf(files.keySet());
    }

    /** Bytes of a file as they are written; empty where there is none of that name. */
    public Optional<byte[]> file(String name) {
        return Optional.ofNullable(files.get(name)).map(byte[]::clone);
    }

    /** Names of the files that are printed sheets. */
    public List<String> printed() {
        return files.keySet().stream().filter(each -> each.endsWith(PDF)).toList();
    }

    /** Pages of a file; none where it is no printed one. */
    public List<Page> pages(String file) {
        if (!printed().contains(file)) {
            return List.of();
        }
        SheetPictures drawn = pictures(file);
        List<PrintedPage> told = pages.getOrDefault(file, List.of());
        return IntStream.range(0, drawn.pages())
                .mapToObj(i -> i < told.size()
                        ? new Page(told.get(i).sheet(), told.get(i).title(), drawn.shape(i))
                        : new Page("", file.substring(0, file.length() - PDF.length()), drawn.shape(i)))
                .toList();
    }

    /**
     * A page as PNG, drawn from the file; empty where there is no such page.
     *
     * @param page from 0
     * @param wide picture elements from side to side
     */
    public Optional<byte[]> picture(String file, int page, int wide) {
        return page < 0 || !printed().contains(file) || page >= pictures(file).pages()
                ? Optional.empty()
                : Optional.of(pictures(file).png(page, wide));
    }

    private synchronized SheetPictures pictures(String file) {
        return pictures.computeIfAbsent(file, any -> new SheetPictures(files.get(file)));
    }

    /** A drawing for other programs as SVG, drawn from the file; empty where it is none. */
    public Optional<byte[]> drawing(String file) {
        return file(file)
                .filter(any -> file.endsWith(DXF))
                .map(bytes -> DxfPicture.of(bytes).getBytes(StandardCharsets.UTF_8));
    }

    /** What is to be handed out anew; empty without an earlier plan. */
    public List<Changed> changed() {
        return document.tables()
                .changes()
                .map(all -> all.sheets().rows().stream()
                        .map(each -> new Changed(each.sheet(), each.part(), each.rows()))
                        .toList())
                .orElse(List.of());
    }

    /** Tables of a file, a sheet each, as whoever opens it has them; none where it holds none. */
    public List<ShownSheet> tables(String file) {
        return file(file).map(bytes -> ShownSheet.of(file, bytes)).orElse(List.of());
    }

    /**
     * Writes what was looked at, to the byte.
     *
     * @param overwrites whether files there that no earlier run wrote, or that were changed since, may be overwritten
     * @return names of what is written
     */
    public List<String> write(Path into, boolean overwrites) {
        return folder.write(into, overwrites, files);
    }

    @Override
    public synchronized void close() {
        pictures.values().forEach(SheetPictures::close);
        pictures.clear();
    }
}
