package evenrise.solver.app;

import evenrise.solver.rendering.SheetPictures;

/**
 * Sheets as they are printed, page by page as pictures.
 *
 * @since 0.1.0
 */
public final class DraftedSheets implements AutoCloseable {
    private final SheetPictures pictures;

    DraftedSheets(SheetPictures pictures) {
        this.pictures = pictures;
    }

    public int pages() {
        return pictures.pages();
    }

    /**
     * A page as PNG.
     *
     * @param page from 0
     * @param wide picture elements from side to side
     */
    public byte[] png(int page, int wide) {
        return pictures.png(page, wide);
    }

    @Override
    public void close() {
        pictures.close();
    }
}
