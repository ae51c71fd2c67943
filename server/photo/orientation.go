package photo

import (
	"bytes"
	"encoding/binary"
)

const (
	// tagOrientation and typeShort are of TIFF 6.0.
	tagOrientation = 0x0112
	typeShort      = 3
	// markerApp1 and markerScan are JPEG markers: Exif data, and the beginning of the pixels.
	markerApp1 = 0xe1
	markerScan = 0xda
)

// orientation returns the Exif orientation of a JPEG, 1 to 8, or 1 when the picture says nothing readable.
func orientation(raw []byte) int {
	if exif := exifBlock(raw); exif != nil {
		if value := orientationIn(exif); value >= 1 && value <= 8 {
			return value
		}
	}
	return 1
}

// exifBlock returns the TIFF structure inside the first Exif segment of a JPEG, or nil.
func exifBlock(raw []byte) []byte {
	if !startsWith("\xff\xd8")(raw) {
		return nil
	}
	for rest := raw[2:]; len(rest) >= 4 && rest[0] == 0xff && rest[1] != markerScan; {
		length := int(binary.BigEndian.Uint16(rest[2:]))
		if length < 2 || length+2 > len(rest) {
			return nil
		}
		if exif, found := bytes.CutPrefix(rest[4:2+length], []byte("Exif\x00\x00")); found && rest[1] == markerApp1 {
			return exif
		}
		rest = rest[2+length:]
	}
	return nil
}

// orientationIn looks the tag up in the first directory of a TIFF structure; 0 when it is not there.
func orientationIn(tiff []byte) int {
	order := byteOrder(tiff)
	if order == nil {
		return 0
	}
	at := int64(order.Uint32(tiff[4:]))
	if at+2 > int64(len(tiff)) {
		return 0
	}
	directory := tiff[at:]
	count := int(order.Uint16(directory))
	const entrySize = 12
	for entry := directory[2:]; count > 0 && len(entry) >= entrySize; entry, count = entry[entrySize:], count-1 {
		if order.Uint16(entry) == tagOrientation && order.Uint16(entry[2:]) == typeShort {
			return int(order.Uint16(entry[8:]))
		}
	}
	return 0
}

// byteOrder reads the first four of the eight bytes that a TIFF structure begins with; nil when it is none.
func byteOrder(tiff []byte) binary.ByteOrder {
	switch {
	case len(tiff) < 8:
		return nil
	case bytes.HasPrefix(tiff, []byte("II*\x00")):
		return binary.LittleEndian
	case bytes.HasPrefix(tiff, []byte("MM\x00*")):
		return binary.BigEndian
	}
	return nil
}
