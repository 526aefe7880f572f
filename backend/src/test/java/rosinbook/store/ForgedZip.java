package rosinbook.store;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/**
 * Writes ZIPs byte by byte, so that they can lie.
 *
 * @see "PKWARE, .ZIP File Format Specification 6.3.10, 4.3"
 */
final class ForgedZip {
    private static final int STORED = 0;
    private static final int DEFLATED = 8;

    /** A file as the directory tells of it; change any field to make it lie. */
    static final class Entry {
        byte[] name;
        byte[] packed;
        int method = DEFLATED;
        int flags = 0x800;
        int madeBy = 20;
        long size;
        long packedSize;
        long crc;
        int attributes;
        long at = -1;
        byte[] extra = {};
        boolean descriptor;
        boolean directoryOnly;

        private Entry(String name, byte[] content, byte[] packed) {
            this.name = name.getBytes(StandardCharsets.UTF_8);
            this.packed = packed;
            this.size = content.length;
            this.packedSize = packed.length;
            CRC32 sum = new CRC32();
            sum.update(content);
            this.crc = sum.getValue();
        }
    }

    private final List<Entry> entries = new ArrayList<>();
    long count = -1;
    boolean isLong;
    byte[] before = {};
    byte[] behind = {};
    String comment = "";

    Entry add(String name, byte[] content) {
        Entry entry = new Entry(name, content, deflated(content));
        entries.add(entry);
        return entry;
    }

    Entry add(String name, String content) {
        return add(name, content.getBytes(StandardCharsets.UTF_8));
    }

    /** A file that is not packed. */
    Entry store(String name, byte[] content) {
        Entry entry = new Entry(name, content, content);
        entry.method = STORED;
        entries.add(entry);
        return entry;
    }

    static byte[] deflated(byte[] content) {
        Deflater deflater = new Deflater(9, true);
        deflater.setInput(content);
        deflater.finish();
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        byte[] block = new byte[1 << 16];
        while (!deflater.finished()) {
            packed.write(block, 0, deflater.deflate(block));
        }
        deflater.end();
        return packed.toByteArray();
    }

    private static ByteBuffer little(int length) {
        return ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
    }

    byte[] bytes() {
        ByteArrayOutputStream zip = new ByteArrayOutputStream();
        zip.writeBytes(before);
        for (Entry entry : entries) {
            if (entry.directoryOnly) {
                continue;
            }
            if (entry.at < 0) {
                entry.at = zip.size();
            }
            local(zip, entry);
        }
        int directoryAt = zip.size();
        for (Entry entry : entries) {
            directory(zip, entry);
        }
        long told = count >= 0 ? count : entries.size();
        end(zip, directoryAt, zip.size() - directoryAt, told);
        zip.writeBytes(behind);
        return zip.toByteArray();
    }

    private static void local(ByteArrayOutputStream zip, Entry entry) {
        int flags = entry.flags | (entry.descriptor ? 8 : 0);
        ByteBuffer head = little(30).putInt(0x0403_4b50).putShort((short) 20).putShort((short) flags);
        head.putShort((short) entry.method).putInt(0);
        head.putInt(entry.descriptor ? 0 : (int) entry.crc)
                .putInt(entry.descriptor ? 0 : (int) entry.packedSize)
                .putInt(entry.descriptor ? 0 : (int) entry.size);
        head.putShort((short) entry.name.length).putShort((short) 0);
        zip.writeBytes(head.array());
        zip.writeBytes(entry.name);
        zip.writeBytes(entry.packed);
        if (entry.descriptor) {
            zip.writeBytes(little(16)
                    .putInt(0x0807_4b50)
                    .putInt((int) entry.crc)
                    .putInt((int) entry.packedSize)
                    .putInt((int) entry.size)
                    .array());
        }
    }

    private static void directory(ByteArrayOutputStream zip, Entry entry) {
        int flags = entry.flags | (entry.descriptor ? 8 : 0);
        ByteBuffer head =
                little(46).putInt(0x0201_4b50).putShort((short) entry.madeBy).putShort((short) 20);
        head.putShort((short) flags).putShort((short) entry.method).putInt(0);
        head.putInt((int) entry.crc).putInt((int) entry.packedSize).putInt((int) entry.size);
        head.putShort((short) entry.name.length)
                .putShort((short) entry.extra.length)
                .putShort((short) 0)
                .putShort((short) 0)
                .putShort((short) 0);
        head.putInt(entry.attributes).putInt((int) entry.at);
        zip.writeBytes(head.array());
        zip.writeBytes(entry.name);
        zip.writeBytes(entry.extra);
    }

    private void end(ByteArrayOutputStream zip, long directoryAt, long directorySize, long told) {
        if (isLong) {
            long at = zip.size();
            zip.writeBytes(little(56)
                    .putInt(0x0606_4b50)
                    .putLong(44)
                    .putShort((short) 45)
                    .putShort((short) 45)
                    .putInt(0)
                    .putInt(0)
                    .putLong(told)
                    .putLong(told)
                    .putLong(directorySize)
                    .putLong(directoryAt)
                    .array());
            zip.writeBytes(little(20)
                    .putInt(0x0706_4b50)
                    .putInt(0)
                    .putLong(at)
                    .putInt(1)
                    .array());
        }
        ByteBuffer end = little(22).putInt(0x0605_4b50).putInt(0);
        end.putShort((short) (isLong ? -1 : told)).putShort((short) (isLong ? -1 : told));
        end.putInt(isLong ? -1 : (int) directorySize).putInt(isLong ? -1 : (int) directoryAt);
        end.putShort((short) comment.length());
        zip.writeBytes(end.array());
        zip.writeBytes(comment.getBytes(StandardCharsets.ISO_8859_1));
    }
}
