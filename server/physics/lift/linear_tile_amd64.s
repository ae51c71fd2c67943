#include "textflag.h"

// func hasAVX() bool
//
// The processor reports AVX and that the system saves registers; the system says it saves the upper halves.
TEXT ·hasAVX(SB), NOSPLIT, $0-1
	MOVB $0, ret+0(FP)
	MOVL $1, AX
	XORL CX, CX
	CPUID
	ANDL $0x18000000, CX // OSXSAVE and AVX
	CMPL CX, $0x18000000
	JNE  done
	XORL CX, CX
	XGETBV
	ANDL $6, AX // lower and upper halves
	CMPL AX, $6
	JNE  done
	MOVB $1, ret+0(FP)

done:
	RET

// func subtractTileAVX(tile, lower *float64, upper *tileRow, stride, pivots int)
//
// Y0..Y7 hold the tile, two registers a row; each turn takes one pivot off all of it.
TEXT ·subtractTileAVX(SB), NOSPLIT, $0-40
	MOVQ tile+0(FP), DI
	MOVQ lower+8(FP), SI
	MOVQ upper+16(FP), DX
	MOVQ stride+24(FP), R8
	MOVQ pivots+32(FP), CX
	SHLQ $3, R8
	LEAQ (R8)(R8*2), R9

	VMOVUPD (DI), Y0
	VMOVUPD 32(DI), Y1
	VMOVUPD (DI)(R8*1), Y2
	VMOVUPD 32(DI)(R8*1), Y3
	VMOVUPD (DI)(R8*2), Y4
	VMOVUPD 32(DI)(R8*2), Y5
	VMOVUPD (DI)(R9*1), Y6
	VMOVUPD 32(DI)(R9*1), Y7

pivot:
	VMOVUPD      (DX), Y8
	VMOVUPD      32(DX), Y9
	VBROADCASTSD (SI), Y10
	VBROADCASTSD (SI)(R8*1), Y11
	VBROADCASTSD (SI)(R8*2), Y12
	VBROADCASTSD (SI)(R9*1), Y13
	VMULPD       Y8, Y10, Y14
	VMULPD       Y9, Y10, Y15
	VSUBPD       Y14, Y0, Y0
	VSUBPD       Y15, Y1, Y1
	VMULPD       Y8, Y11, Y14
	VMULPD       Y9, Y11, Y15
	VSUBPD       Y14, Y2, Y2
	VSUBPD       Y15, Y3, Y3
	VMULPD       Y8, Y12, Y14
	VMULPD       Y9, Y12, Y15
	VSUBPD       Y14, Y4, Y4
	VSUBPD       Y15, Y5, Y5
	VMULPD       Y8, Y13, Y14
	VMULPD       Y9, Y13, Y15
	VSUBPD       Y14, Y6, Y6
	VSUBPD       Y15, Y7, Y7
	ADDQ         $64, DX
	ADDQ         $8, SI
	DECQ         CX
	JNZ          pivot

	VMOVUPD Y0, (DI)
	VMOVUPD Y1, 32(DI)
	VMOVUPD Y2, (DI)(R8*1)
	VMOVUPD Y3, 32(DI)(R8*1)
	VMOVUPD Y4, (DI)(R8*2)
	VMOVUPD Y5, 32(DI)(R8*2)
	VMOVUPD Y6, (DI)(R9*1)
	VMOVUPD Y7, 32(DI)(R9*1)
	VZEROUPPER
	RET
